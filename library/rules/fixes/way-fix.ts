import { copperMm2M } from "../../analysis/copper-area.ts";
import { groupedBy } from "../../analysis/grouped-by.ts";
import type { SupplyPath } from "../../analysis/network-result.ts";
import type { LimitKind, PathSizing } from "../../analysis/repair-sizing.ts";
import { withoutLengthTo } from "../../analysis/unknown-lengths.ts";
import { internalConnections } from "../../model/internal-connections.ts";
import type { NetworkConductor, Part } from "../../model/network.ts";
import type { ProposedFix, Related } from "../finding.ts";
import type { JudgedNetwork, JudgedPlan } from "../rule.ts";
import { counted, withUnit } from "../wording/format-number.ts";
import { atConductor, listInWords } from "../wording/part-in-words.ts";
import { runsWithoutLength } from "../wording/unknown-length.ts";
import { beyondNeedInWords, sizedChanges, sizingFor } from "./sized-fix.ts";

/**
 * The fixes for a supply path with too much loss: its share of the sizes for the whole plan, which take the least copper. If that
 * changes conductors on which other devices are, or makes one far thicker than it need be, it is an offer. Sizes of the device's own
 * conductors that are enough alone come first, as the repair; but after the offer, as a suggestion, if other devices lose too much over
 * the same conductors and these take less copper.
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
  const atLeast = unknownLengthsTo(plan, on.part);
  const whole = least ? [fixOf(least, on.place, atLeast)] : [];
  if (!alone) return whole;
  const own = fixOf(alone, on.place, atLeast);
  const isFirst = !isSharedNeed || isFar(least) || addedMm2M(alone) < addedMm2M(least);
  return isFirst ? [own, ...whole] : [...whole, { ...own, kind: "suggestion" }];
}

/** ", or thicker: the length of feed is not known"; "" if every length to the device is known. */
function unknownLengthsTo({ network: judged }: JudgedPlan, device: number): string {
  const part = judged?.network.parts[device];
  if (!judged || !part) return "";
  const runs = runsWithoutLength(judged.network, withoutLengthTo(judged, part));
  if (runs.length === 0) return "";
  return `, or thicker: the ${runs.length === 1 ? "length" : "lengths"} of ${listInWords(runs, 3)} ${runs.length === 1 ? "is" : "are"} not known`;
}

function isFar(sizing: PathSizing | undefined): boolean {
  return sizing?.runs.some(({ beyondNeed }) => beyondNeed) ?? false;
}

/** The copper that it adds, mm²·m. */
function addedMm2M(sizing: PathSizing | undefined): number {
  const added = sizing?.runs.map(
    ({ run, conductor }) => copperMm2M(run, conductor) - copperMm2M(run, run.conductor),
  );
  return added?.reduce((sum, one) => sum + one, 0) ?? 0;
}

function fixOf(sizing: PathSizing, place: number, atLeast: string): ProposedFix {
  const { runs, otherDevices } = sizing;
  const sized = runs.map((sizing) => ({ sizing, ...sizedChanges(sizing.run, sizing) }));
  // Its own first: the other devices are on the others.
  const isOwn = ({ sizing: { run } }: (typeof sized)[number]) => Number(run.record === place);
  const ownFirst = sized.toSorted((one, other) => isOwn(other) - isOwn(one));
  const words = [...groupedBy(ownFirst, ({ words }) => words)].map(([size, alike]) => {
    const others = alike.flatMap(({ sizing: { run } }) => (run.record === place ? [] : [run.name]));
    const where = [
      ...(others.length < alike.length && runs.length > 1 ? ["here"] : []),
      ...(others.length > 0 ? [`for ${listInWords(others, 12)}`] : []),
    ];
    return [size, where.join(" and ")].filter(Boolean).join(" ");
  });
  const isBeyond = isFar(sizing);
  const isOffer = otherDevices > 0 || isBeyond;
  const others =
    otherDevices > 0
      ? ` (which ${counted(otherDevices, "other device")} share${otherDevices > 1 ? "" : "s"})`
      : "";
  return {
    title: `Use ${listInWords(words, 12)}${others}${isBeyond ? beyondNeedInWords : ""}${atLeast}`,
    kind: isOffer ? "suggestion" : "repair",
    ...(isOffer && { otherDevices }),
    changes: sized.flatMap(({ changes }) => changes),
  };
}

/** The voltage lost on one run of a path, both of its conductors together. */
export interface Loss {
  readonly conductor: NetworkConductor;
  readonly dropV: number;
}

/** The runs of a path, highest loss first. */
export function lossesOn({ network }: Pick<JudgedNetwork, "network">, way: SupplyPath): readonly Loss[] {
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

/** The voltage lost inside the parts on a path, such as a chassis, a fuse holder or a shunt, if a conductor does not lose more. */
export interface LostInParts {
  readonly dropV: number;
  /** Those with a resistance, in path order. */
  readonly parts: readonly Part[];
  /** Without it, the path keeps its limit. */
  readonly isCause: boolean;
}

/** Undefined: less than the conductor with the highest loss. */
export function lostInParts({ network }: JudgedNetwork, way: SupplyPath): LostInParts | undefined {
  const inRuns = lossesOn({ network }, way);
  const inConductorsV = inRuns.reduce((sum, { dropV }) => sum + dropV, 0);
  const dropV = way.dropV - inConductorsV;
  if (!(dropV > (inRuns[0]?.dropV ?? 0))) return undefined;
  const passed = way.legs.flatMap(({ conductor }) => {
    const { from, to } = network.conductors[conductor] ?? {};
    return [from, to].flatMap((end) => (end === undefined ? [] : network.terminals[end]!.part));
  });
  const parts = [...new Set(passed)]
    .flatMap((index) => network.parts[index] ?? [])
    .filter((part) => internalConnections(part).some(({ ohm }) => ohm > 0));
  const limitV = (way.dropV * way.dropLimitPercent) / way.dropPercent;
  return parts.length === 0 ? undefined : { dropV, parts, isCause: inConductorsV <= limitV };
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
