import { groupedBy } from "../../analysis/grouped-by.ts";
import { sizesAbove } from "../../analysis/made-sizes.ts";
import {
  type RepairSizing,
  type RunSizing,
  repairSizing,
  sizingWithoutAcceptance,
} from "../../analysis/repair-sizing.ts";
import { isAccepted, type Sizing, thinnestSufficient } from "../../analysis/sizing.ts";
import { fitsTerminals, tightestTerminal } from "../../analysis/terminal-size.ts";
import type { Conductor, Protection, Run } from "../../model/run.ts";
import type { RuleId } from "../../plan/rule-id.ts";
import type { Change, ProposedFix } from "../finding.ts";
import type { JudgedPlan } from "../rule.ts";
import { formatRounded } from "../wording/format-number.ts";
import { listInWords } from "../wording/part-in-words.ts";
import { farEndRatingPath, ratingPath, sizePath } from "../wording/property-paths.ts";
import { type FixToUse, otherLevers, toUse } from "../wording/way-out.ts";

/**
 * The repair of a run, the same for every finding about it: the size that meets all its limits and those of the supply paths on
 * which it is, and new ratings if the stated ones do not fit. Never a thinner conductor. Empty if no made size is enough, or if the
 * plan has the right sizes already. Missing protection is left to the rule that reports it.
 *
 * `rule`: that of the finding. If the builder accepted it, the repair is that of a plan without acceptance.
 */
export function runFixes(plan: JudgedPlan, circuit: Run, rule: RuleId): ProposedFix[] {
  return fixesOfRun(circuit, sizingFor(plan, isAccepted(circuit, rule)));
}

/** As {@link runFixes}, with the sizes of a plan: with thicker conductors behind its device, if that alone keeps it from a rating that fits. */
export function fixesOfRun(circuit: Run, sizes: RepairSizing): ProposedFix[] {
  const sizing = sizes.ofRun(circuit);
  const together = sizing ? undefined : sizes.withThoseBehind(circuit);
  const [own] = sizedFixes(circuit, sizing ?? together?.sizing);
  if (!own || !together) return own ? [own] : [];
  const { others } = together;
  const words = [...groupedBy(others, ({ conductor }) => sizeInWords(conductor))].map(
    ([size, alike]) => `${size} for ${listInWords(alike.map(({ run }) => run.name))}`,
  );
  return [
    {
      ...own,
      ...toUse(`${own.noun}, and ${listInWords(words, 12)}`),
      changes: [...own.changes, ...others.map(({ run, conductor }) => setSize(run, conductor))],
    },
  ];
}

/** The sizing behind {@link runFixes}. */
export function runSizing(plan: JudgedPlan, circuit: Run, rule: RuleId): RunSizing | undefined {
  return sizingFor(plan, isAccepted(circuit, rule)).ofRun(circuit);
}

/** The sizes of the plan, for a finding that is accepted or not. */
export function sizingFor(plan: JudgedPlan, accepted: boolean): RepairSizing {
  return accepted ? sizingWithoutAcceptance(plan) : repairSizing(plan);
}

/** As {@link runFixes}, with a given result of the sizing analysis. */
export function sizedFixes(circuit: Run, sizing: Sizing | RunSizing | undefined): FixToUse[] {
  if (!sizing || sizesAbove(sizing.conductor, circuit.conductor) < 0) return [];
  const { words, changes } = sizedChanges(circuit, sizing);
  if (changes.length === 0) return [];
  const isBeyond = "beyondNeed" in sizing && sizing.beyondNeed;
  const beyond = isBeyond ? beyondNeedInWords : "";
  const named = toUse(`${words}${beyond}`);
  return [
    isBeyond
      ? { ...named, kind: "suggestion", otherDevices: 0, changes }
      : { ...named, kind: "repair", changes },
  ];
}

/** Stated where an offer makes a conductor thicker than a repair may, with the other ways out. */
export const beyondNeedInWords = ` (more than two sizes above its own need, as no thinner size meets the limit; else ${otherLevers}, or state a larger limit)`;

/** The end of a message where no size can be proposed: a terminal that takes no size that is enough is named as the reason. */
export function whyNoSize(run: Run, otherwise: string): string {
  const terminal = tightestTerminal(run);
  if (!terminal) return otherwise;
  const { terminalSizes: _, ...anyTerminals } = run;
  const needed = thinnestSufficient(anyTerminals)?.conductor;
  if (!needed || fitsTerminals(run, needed)) return otherwise;
  const takes = `${terminal.of ?? "its load"} takes ${sizeInWords(terminal.largest)} at most`;
  return `${sizeInWords(needed)} is needed, and ${takes}; shorten the run, split the load, or end a thicker conductor at a stud beside it`;
}

/**
 * The changes from a run to its sizing, and in words: "6 AWG with a 50 A fuse", "a 50 A fuse (elsewhere: its place permits 30 A)".
 */
export function sizedChanges(
  circuit: Run,
  { conductor, ratingA, ratingFarEndA, placeA }: Sizing & Pick<RunSizing, "placeA">,
): { readonly words: string; readonly changes: readonly Change[] } {
  const { protection, protectionFarEnd } = circuit;
  const changes: Change[] = [];
  const words: string[] = [];
  if (sizesAbove(conductor, circuit.conductor) !== 0) {
    changes.push(setSize(circuit, conductor));
    words.push(sizeInWords(conductor));
  }
  if (protection && ratingA !== undefined && protection.ratingA !== ratingA) {
    changes.push(setRating(circuit, ratingA));
    words.push(deviceInWords(protection, ratingA));
  }
  if (protectionFarEnd && ratingFarEndA !== undefined && protectionFarEnd.ratingA !== ratingFarEndA) {
    changes.push(setFarEndRating(circuit, ratingFarEndA));
    words.push(`${deviceInWords(protectionFarEnd, ratingFarEndA)} at the far end`);
  }
  const [first = "", ...rest] = words;
  const isRated = changes.some(({ path }) => path[0] !== sizePath(circuit)[0]);
  const elsewhere =
    placeA === undefined || !isRated ? "" : ` (elsewhere: its place permits ${formatRounded(placeA)} A)`;
  return { words: `${first}${rest.length > 0 ? ` with ${rest.join(" and ")}` : ""}${elsewhere}`, changes };
}

/** Sets the near-end rating, keeping the object form of `protect`. */
export function setRating(circuit: Run, ratingA: number): Change {
  return { do: "set", record: circuit.record, path: ratingPath(circuit), value: ratingA };
}

/** Sets the far-end rating, keeping the object form of `protectFarEnd`. */
export function setFarEndRating(circuit: Run, ratingA: number): Change {
  return { do: "set", record: circuit.record, path: farEndRatingPath(circuit), value: ratingA };
}

/** Sets the trade size in the plan's own system. */
export function setSize(circuit: Run, conductor: Conductor): Change {
  const value = conductor.system === "awg" ? conductor.awg : conductor.mm2;
  return { do: "set", record: circuit.record, path: sizePath(circuit), value };
}

/** "6 AWG", "16 mm²", and for wires side by side "2 × 6 AWG". */
export function sizeInWords(conductor: Conductor): string {
  const one = conductor.system === "awg" ? `${conductor.awg} AWG` : `${conductor.mm2} mm²`;
  return conductor.parallel > 1 ? `${conductor.parallel} × ${one}` : one;
}

/** The conductors of a run: "6 AWG", and for the two of one cable "14 AWG, flat duplex". */
export function sizeOfRunInWords({ conductor, duplex }: Pick<Run, "conductor" | "duplex">): string {
  return duplex === undefined ? sizeInWords(conductor) : `${sizeInWords(conductor)}, ${duplex}`;
}

/** "a 50 A fuse", "an 80 A breaker". */
export function deviceInWords(protection: Protection | null, ratingA: number): string {
  // An 8 is spoken with a vowel: "an 80 A fuse"; so are 11 and 18.
  const article = /^(8|11\b|18\b)/.test(String(ratingA)) ? "an" : "a";
  return `${article} ${formatRounded(ratingA)} A ${deviceKind(protection)}`;
}

/** The builder's name for the protective device: a fuse, unless the plan states a breaker. */
export function deviceKind(protection: Protection | null): "fuse" | "breaker" {
  return protection?.family === "circuit breaker" ? "breaker" : "fuse";
}
