import { supportsNeeded } from "../../analysis/placement/supports-needed.ts";
import type { BoardUnit } from "../../model/length-unit.ts";
import { boardUnitOf } from "../../model/unit-of-plan.ts";
import { supports } from "../../standards/conductor-ways.ts";
import { defineRule, type Found } from "../rule.ts";
import { counted, exceeds, withUnit } from "../wording/format-number.ts";
import { distinctShortLengths, shortLengthInUnit } from "../wording/lengths.ts";
import { listInWords } from "../wording/part-in-words.ts";
import { atRecord, relatedLead, runNames } from "../wording/placement-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const supportsMissing = defineRule<Values>({
  id: "placement/supports",
  title: "Supports too far apart",
  severity: "warning",
  why: "A conductor that hangs free chafes with every movement, until it is bare or its terminal works loose.",
  sources: [supports.source, supports.toDisconnect.source],
  fixable: true,
  acceptable: true,
  // Needs the supports along the ways. One piece of information names all stretches whose supports no plan can state.
  check({ placement }): Found<Values>[] {
    if (!placement) return [];
    const { layout } = placement;
    const unit = boardUnitOf(layout);
    const stretches = supportsNeeded(placement);
    const bundles = stretches.flatMap(
      ({ channel: index, lead, everyMm, statedMm, ...stretch }): Found<Values>[] => {
        const channel = layout.channels[index ?? -1];
        if (!channel || statedMm === undefined || !exceeds(statedMm, everyMm)) return [];
        const { toDisconnect, needed } = stretch;
        return [
          {
            subject: channel.name,
            at: atRecord(channel, "supportsEveryMm"),
            values: {
              kind: "bundle",
              statedMm,
              everyMm,
              toDisconnect,
              needed,
              source: sourceOf(everyMm),
            },
            related: [relatedLead(layout.leads[lead]!)],
            fixes: [
              {
                title: `Support it every ${withUnit(everyMm, "mm")}`,
                kind: "repair",
                changes: [{ do: "set", record: channel.record, path: ["supportsEveryMm"], value: everyMm }],
              },
            ],
          },
        ];
      },
    );
    const open = stretches.filter(({ channel }) => channel === undefined);
    const [first] = open;
    if (!first) return bundles;
    const leads = open.map(({ lead }) => lead);
    const longest = open.reduce((one, other) => (other.lengthMm > one.lengthMm ? other : one));
    return [
      ...bundles,
      {
        subject: "the plan",
        at: atRecord(layout.leads[first.lead]!),
        severity: "info",
        values: {
          ...{ kind: "open", unit },
          names: runNames(layout, leads),
          needed: open.reduce((sum, one) => sum + one.needed, 0),
          lengthMm: longest.lengthMm,
          everyMm: longest.everyMm,
          source: sourceOf(longest.everyMm),
        },
        related: leads.slice(1, mostRelated).map((lead) => relatedLead(layout.leads[lead]!)),
      },
    ];
  },
  message(values) {
    if (values.kind === "bundle") {
      const [stated, every] = distinctShortLengths(values.statedMm, values.everyMm, "mm");
      const need = values.toDisconnect
        ? "the conductor from a battery to its disconnect needs"
        : "conductors here need";
      return `Supports every ${stated} are too far apart: ${need} one at least every ${every} (${values.source}), ${counted(values.needed, "support")} in all.`;
    }
    const { names, needed, lengthMm, everyMm, unit, source } = values;
    return `${listInWords(names, 3)} ${names.length === 1 ? "lies" : "lie"} in the open over up to ${shortLengthInUnit(lengthMm, unit)}: a support at least every ${shortLengthInUnit(everyMm, unit)} (${source}) takes ${counted(needed, "support")} in all; the parts list counts them.`;
  },
});

type Values =
  | {
      readonly kind: "bundle";
      readonly statedMm: number;
      readonly everyMm: number;
      /** A conductor from a battery to its disconnect is in it. */
      readonly toDisconnect: boolean;
      readonly needed: number;
      readonly source: string;
    }
  | {
      readonly kind: "open";
      readonly unit: BoardUnit;
      readonly names: readonly string[];
      readonly needed: number;
      /** Of the longest stretch. */
      readonly lengthMm: number;
      readonly everyMm: number;
      readonly source: string;
    };

function sourceOf(everyMm: number): string {
  return sourceInWords(everyMm === supports.everyMm ? supports.source : supports.toDisconnect.source);
}

const mostRelated = 8;
