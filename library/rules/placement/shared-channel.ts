import { groupedBy } from "../../analysis/grouped-by.ts";
import { bundlesOf, sharedRuns } from "../../analysis/placement/shared-channels.ts";
import { metresPerInch } from "../../model/length-limits.ts";
import type { BoardUnit } from "../../model/length-unit.ts";
import { boardUnitOf } from "../../model/unit-of-plan.ts";
import { sharedChannel } from "../../standards/shared-channels.ts";
import { atProperty, defineRule, type Found } from "../rule.ts";
import { exceeds, formatDistinctWithUnit, withUnit } from "../wording/format-number.ts";
import { shortLengthInUnit } from "../wording/lengths.ts";
import { listInWords } from "../wording/part-in-words.ts";
import { atRecord } from "../wording/placement-in-words.ts";
import { sourceInWords, unconfirmed } from "../wording/source-in-words.ts";

export const conductorsShareChannel = defineRule<Values>({
  id: "placement/shared-channel",
  title: "Conductors share a channel",
  severity: "info",
  why: "Conductors that lie together keep each other warm, and carry less than each would alone.",
  sources: [sharedChannel.source, sharedChannel.leastLengthSource],
  fixable: false,
  acceptable: true,
  // Needs the conductors that carry load together in each channel, and the ampacity of each with the factor. One finding a channel.
  check({ placement, network, circuits }): Found<Values>[] {
    if (!placement || !network) return [];
    const bundles = bundlesOf(placement, network.network, network.result.scenarios);
    const runs = circuits.filter(({ circuit }) => circuit.inNetwork).map(({ circuit }) => circuit);
    const byChannel = groupedBy(sharedRuns(placement, runs, bundles), ({ channel }) => channel);
    return [...byChannel].map(([index, shared]): Found<Values> => {
      const channel = placement.layout.channels[index]!;
      const inOrder = [...shared].sort(
        (one, other) => other.loadA / other.bundledA - one.loadA / one.bundledA,
      );
      const [nearest] = inOrder as [(typeof inOrder)[number]];
      return {
        subject: channel.name,
        at: atRecord(channel),
        values: {
          together: 1 + Math.max(...shared.map(({ others }) => others)),
          ...{ name: nearest.run.name, loadA: nearest.loadA },
          ...{ ampacityA: nearest.ampacityA, bundledA: nearest.bundledA },
          above: inOrder.filter(({ loadA, bundledA }) => exceeds(loadA, bundledA)).map(({ run }) => run.name),
          unit: boardUnitOf(placement.layout),
          source: sourceInWords(sharedChannel.source),
        },
        related: inOrder.slice(0, mostRelated).map(({ run }) => ({ at: atProperty(run), text: run.name })),
      };
    });
  },
  message({ together, name, loadA, ampacityA, bundledA, above, unit, source }) {
    const [alone, bundled] = formatDistinctWithUnit(ampacityA, bundledA, "A");
    const load = withUnit(loadA, "A");
    const verdict =
      above.length === 0
        ? `each run still carries its load, ${name} with ${load} of ${bundled} instead of ${alone}`
        : `${listInWords(above, 3)} would be overloaded, ${name} with ${load} of ${bundled} instead of ${alone}`;
    const length = shortLengthInUnit(sharedChannel.leastLengthIn * mmPerInch, unit);
    return `Up to ${together} conductors carry load together here over ${length} or more (${unconfirmed}). The factor for that is a demand only from ${sharedChannel.demandedFromV} V (${source}). With it ${verdict}. bundledInChannels in build judges by it.`;
  },
});

const mmPerInch = metresPerInch * 1_000;

interface Values {
  /** Conductors that carry load in one scenario. */
  readonly together: number;
  /** The run with the greatest load for its ampacity with the factor. */
  readonly name: string;
  readonly loadA: number;
  readonly ampacityA: number;
  readonly bundledA: number;
  /** Runs with more load than that ampacity. */
  readonly above: readonly string[];
  readonly unit: BoardUnit;
  readonly source: string;
}

const mostRelated = 8;
