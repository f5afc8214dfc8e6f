import type { SupplyPath } from "../../analysis/network-result.ts";
import type { LimitKind, PathSizing } from "../../analysis/repair-sizing.ts";
import type { NetworkConductor } from "../../model/network.ts";
import type { ProposedFix, Related } from "../finding.ts";
import type { JudgedNetwork, JudgedPlan } from "../rule.ts";
import { counted, withUnit } from "../wording/format-number.ts";
import { atConductor, listInWords } from "../wording/part-in-words.ts";
import { beyondNeedInWords, sizedChanges, sizingFor } from "./sized-fix.ts";

/**
 * The fixes for a supply path with too much loss: its share of the sizes for the whole plan, which take the least copper. If that
 * changes conductors on which other devices are, it is an offer. Sizes of the device's own conductors that are enough alone come first,
 * as the repair; but after the offer, as a suggestion, if other devices lose too much over the same conductors.
 */
export function wayFixes(
  plan: JudgedPlan,
  on: {
    /** The device at the end of the path. */
    readonly part: number;
    readonly kinds: readonly LimitKind[];
    /** The record of the finding, which needs no name. */
    readonly place: number;
    /** The builder accepted the finding. */
    readonly accepted: boolean;
  },
): ProposedFix[] {
  const { least, alone, isSharedNeed } = sizingFor(plan, on.accepted).ofPath(on.part, on.kinds);
  const whole = least ? [fixOf(least, on.place)] : [];
  if (!alone) return whole;
  const own = fixOf(alone, on.place);
  return isSharedNeed ? [...whole, { ...own, kind: "suggestion" }] : [own, ...whole];
}

function fixOf({ runs, otherDevices }: PathSizing, place: number): ProposedFix {
  const sized = runs.map((sizing) => ({ ...sizedChanges(sizing.run, sizing), sizing }));
  const words = sized.map(({ words: size, sizing: { run } }) => {
    const where = run.record === place ? (runs.length > 1 ? " here" : "") : ` for ${run.name}`;
    return `${size}${where}`;
  });
  const isBeyond = runs.some(({ beyondNeed }) => beyondNeed);
  const others =
    otherDevices > 0
      ? ` (which ${counted(otherDevices, "other device")} share${otherDevices > 1 ? "" : "s"})`
      : "";
  return {
    title: `Use ${listInWords(words, 12)}${others}${isBeyond ? beyondNeedInWords : ""}`,
    kind: otherDevices > 0 ? "suggestion" : "repair",
    ...(otherDevices > 0 && { otherDevices }),
    changes: sized.flatMap(({ changes }) => changes),
  };
}

/** The voltage lost on one run of a path, both of its conductors together. */
export interface Loss {
  readonly conductor: NetworkConductor;
  readonly dropV: number;
}

/** The runs of a path, highest loss first. */
export function lossesOn({ network }: JudgedNetwork, way: SupplyPath): readonly Loss[] {
  const losses = new Map<number, Loss>();
  for (const { conductor: index, dropV } of way.legs) {
    const conductor = network.conductors[index];
    if (!conductor) continue;
    const before = losses.get(conductor.record);
    losses.set(conductor.record, {
      conductor: before?.conductor ?? conductor,
      dropV: dropV + (before?.dropV ?? 0),
    });
  }
  return [...losses.values()].sort((one, other) => other.dropV - one.dropV);
}

/** The other places of such a finding: the runs with the highest losses, except its own. */
export function relatedLosses(losses: readonly Loss[], place: number): Related[] {
  return losses
    .filter(({ conductor, dropV }) => conductor.record !== place && dropV > 0)
    .slice(0, mostRelated)
    .map(({ conductor, dropV }) => ({
      at: atConductor(conductor),
      text: `${conductor.name} loses ${withUnit(dropV, "V")}`,
    }));
}

const mostRelated = 3;
