import type { InlayHint, Range } from "vscode-languageserver-types";
import { designCurrentA } from "../../library/analysis/design-current.ts";
import type { SupplyPath } from "../../library/analysis/network-result.ts";
import { dropVerdict } from "../../library/analysis/voltage-drop.ts";
import { ownDrop, worstDrop } from "../../library/documents/worst-drop.ts";
import type { Run } from "../../library/model/run.ts";
import { type JudgedRun, withKnownCurrent } from "../../library/rules/rule.ts";
import { formatDistinct, withUnit } from "../../library/rules/wording/format-number.ts";
import { listInWords } from "../../library/rules/wording/part-in-words.ts";
import type { CheckedPlan, SourceRange } from "../evaluate/checked-plan.ts";
import type { Uri } from "../evaluate/workspace.ts";
import { several } from "./counts.ts";
import { waysOfCircuits } from "./network-at.ts";
import { editorWords } from "./plain-words.ts";
import type { PlanInView } from "./plan-in-view.ts";

/**
 * Drop and spare capacity beside each conductor size in a range of a file; for a cable, the current and the spare capacity. If
 * one written size serves several, the hint shows the worst of them.
 */
export function inlayHints(view: PlanInView, uri: Uri, within: Range): InlayHint[] {
  const { sizes, ways } = sizedRuns(view.plan);
  return [...(sizes.get(uri)?.values() ?? [])].flatMap(({ place, judged, unsolved }) => {
    const range = view.range(place);
    if (!range || range.end.line < within.start.line || range.end.line > within.end.line) return [];
    const words = judged.length > 0 ? { label: label(judged), tooltip: tooltip(judged, ways) } : notWorkedOut;
    const also = judged.length > 0 && unsolved > 0 ? ` ${notWorkedOut.tooltip}` : "";
    return [
      {
        position: range.end,
        label: editorWords(words.label),
        tooltip: editorWords(`${words.tooltip}${also}`),
        paddingLeft: true,
      },
    ];
  });
}

/** For a run of a network without a solved scenario: a missing hint would read as no problem. */
const notWorkedOut = {
  label: "current not worked out",
  tooltip: "Its current could not be worked out in any scenario.",
};

interface Sized {
  readonly place: SourceRange;
  readonly judged: JudgedRun[];
  /** Runs of the network whose current is unknown. */
  unsolved: number;
}

interface SizedRuns {
  /** By file, then by place. */
  readonly sizes: ReadonlyMap<Uri, ReadonlyMap<string, Sized>>;
  readonly ways: Ways;
}

/** An editor asks at every scroll: the part that does not depend on the range is computed once a plan. */
const known = new WeakMap<CheckedPlan, SizedRuns>();

function sizedRuns(plan: CheckedPlan): SizedRuns {
  let runs = known.get(plan);
  if (!runs) {
    const { network } = plan.judgement;
    runs = { sizes: runsBySize(plan), ways: network ? waysOfCircuits(network) : new Map() };
    known.set(plan, runs);
  }
  return runs;
}

function runsBySize(plan: CheckedPlan): Map<Uri, Map<string, Sized>> {
  const byFile = new Map<Uri, Map<string, Sized>>();
  const sizeOf = ({ record, conductor }: Run): Sized | undefined => {
    const place = plan.placeOf(record, [conductor.system === "awg" ? "gauge" : "mm2"]);
    if (!place) return undefined;
    const bySize = byFile.get(place.uri) ?? new Map<string, Sized>();
    byFile.set(place.uri, bySize);
    const key = `${place.start}-${place.end}`;
    const sized = bySize.get(key) ?? { place, judged: [], unsolved: 0 };
    bySize.set(key, sized);
    return sized;
  };
  const { circuits, network } = plan.judgement;
  for (const judged of withKnownCurrent(circuits)) sizeOf(judged.circuit)?.judged.push(judged);
  for (const [index, { role, run }] of network?.network.conductors.entries() ?? []) {
    if (role === "return" || network?.result.conductors[index]?.worst) continue;
    const sized = sizeOf(run);
    if (sized) sized.unsolved++;
  }
  return byFile;
}

/** Begins with a word: beside the size, a number would be read as part of it. */
function label(judged: readonly JudgedRun[]): string {
  const least = leastSpare(judged);
  const allJudged = judged.every(({ result }) => result.ampacity.judged);
  return [
    dropOrCurrent(judged),
    least === undefined ? "" : spareInWords(least),
    allJudged ? "" : "ampacity not judged",
  ]
    .filter((part) => part !== "")
    .join(", ");
}

/** The drop of a cable has no limit of its own: for cables alone, the current is more useful. */
function dropOrCurrent(judged: readonly JudgedRun[]): string {
  const circuits = judged.filter(isCircuit);
  if (circuits.length === 0) return `carries ${withUnit(ofGreatestCurrent(judged).circuit.loadA, "A")}`;
  if (circuits.some(({ result }) => !result.drop.judged)) return "drop not judged";
  const drop = ofWorstDrop(circuits)?.result.drop;
  if (!drop?.judged) return "drop not judged";
  const { overloaded, dropPercent } = drop;
  return `drop ${overloaded ? "at least " : ""}${withUnit(dropPercent, "%")}`;
}

function isCircuit({ circuit }: JudgedRun): boolean {
  return circuit.word === "circuit";
}

function spareInWords(spareA: number): string {
  return spareA < 0 ? `${withUnit(-spareA, "A")} too much` : `${withUnit(spareA, "A")} spare`;
}

type Ways = ReturnType<typeof waysOfCircuits>;

function tooltip(judged: readonly JudgedRun[], ways: Ways): string {
  const circuits = judged.filter(isCircuit);
  const { circuit, result } = ofWorstDrop(circuits) ?? ofGreatestCurrent(judged);
  const { drop, ampacity } = result;
  const carries = ampacity.judged
    ? carriedInWords(designCurrentA(circuit), ampacity.ampacityA)
    : `carries ${withUnit(designCurrentA(circuit), "A")}; its ampacity was not judged`;
  const limitOnWay = circuit.word === "cable" ? "" : wayInWords(ways.get(circuit.record));
  const one = `${circuit.name}: ${carries}, ${lossInWords(circuit, drop)}${limitOnWay}.`;
  const others = several(judged.length - 1, othersOf(judged));
  if (others === "") return one;
  const shown = circuits.length > 0 ? "the worst drop" : "the greatest current";
  const unknown = judged.filter(({ result }) => !result.drop.judged).map((other) => other.circuit.name);
  const notJudged = unknown.length === 0 ? "" : ` No length is known of ${listInWords(unknown, 3)}.`;
  return `${one} This size also serves ${others}; ${shown} and the least spare are shown.${notJudged}`;
}

function lossInWords({ word }: JudgedRun["circuit"], drop: JudgedRun["result"]["drop"]): string {
  if (!drop.judged) return "its drop was not judged, because its length is not known";
  const loses = `loses ${drop.overloaded ? "at least " : ""}${withUnit(drop.dropV, "V")}`;
  if (word === "cable") return loses;
  const [percent, limit] = formatDistinct(drop.dropPercent, drop.dropLimitPercent);
  return `${loses}, ${percent} %, over the round trip; limit ${limit} %`;
}

function wayInWords(way: SupplyPath | undefined): string {
  if (!way) return "";
  if (dropVerdict(way) === "not judged")
    return "; the drop on the whole path from the bank was not judged, because a length is not known";
  const [percent, limit] = formatDistinct(way.dropPercent, way.dropLimitPercent);
  return `; ${way.withoutLength.length > 0 ? "at least " : ""}${percent} % on the whole path from the bank, limit ${limit} %`;
}

function othersOf(judged: readonly JudgedRun[]): string {
  const circuits = judged.filter(isCircuit).length;
  return circuits === judged.length ? "other circuit" : circuits === 0 ? "other cable" : "other run";
}

function ofGreatestCurrent(judged: readonly JudgedRun[]): JudgedRun {
  return judged.reduce((one, other) =>
    designCurrentA(other.circuit) > designCurrentA(one.circuit) ? other : one,
  );
}

function carriedInWords(loadA: number, ampacityA: number): string {
  const [load, most] = formatDistinct(loadA, ampacityA);
  return `carries ${load} A, may carry ${most} A`;
}

/** Undefined if none of them has a drop that is known. */
function ofWorstDrop(judged: readonly JudgedRun[]): JudgedRun | undefined {
  const drops = judged.flatMap((one) =>
    one.result.drop.judged ? [{ ...ownDrop(one.result.drop), one }] : [],
  );
  return worstDrop(drops)?.one;
}

/** Undefined if the ampacity of none of them could be judged. */
function leastSpare(judged: readonly JudgedRun[]): number | undefined {
  const spares = judged.flatMap(({ circuit, result: { ampacity } }) =>
    ampacity.judged ? [ampacity.ampacityA - designCurrentA(circuit)] : [],
  );
  return spares.length > 0 ? spares.reduce((one, other) => Math.min(one, other)) : undefined;
}
