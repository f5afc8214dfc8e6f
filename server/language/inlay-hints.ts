import type { InlayHint, Range } from "vscode-languageserver-types";
import { worstDrop } from "../../library/documents/worst-drop.ts";
import { tellApart, withUnit } from "../../library/rules/figures.ts";
import type { JudgedCircuit } from "../../library/rules/rule.ts";
import type { Place } from "../evaluate/checked-plan.ts";
import type { Uri } from "../evaluate/workspace.ts";
import { several } from "./counts.ts";
import { plainWords } from "./plain-words.ts";
import type { PlanInView } from "./plan-in-view.ts";

/**
 * Drop and spare capacity beside each conductor size in a stretch of a file. Where one written size serves several circuits,
 * the hint speaks for the worst of them.
 */
export function inlayHints(view: PlanInView, uri: Uri, within: Range): InlayHint[] {
  return [...circuitsBySize(view, uri).values()].flatMap(({ place, judged }) => {
    const range = view.range(place);
    if (!range || range.end.line < within.start.line || range.end.line > within.end.line) return [];
    return [
      {
        position: range.end,
        label: label(judged),
        tooltip: tooltip(judged),
        paddingLeft: true,
      },
    ];
  });
}

interface Sized {
  readonly place: Place;
  readonly judged: JudgedCircuit[];
}

function circuitsBySize(view: PlanInView, uri: Uri): Map<string, Sized> {
  const bySize = new Map<string, Sized>();
  for (const judged of view.plan.judgement.circuits) {
    const { record, conductor } = judged.circuit;
    const place = view.plan.placeOf(record, [conductor.system === "awg" ? "gauge" : "mm2"]);
    if (place?.uri !== uri) continue;
    const key = `${place.start}-${place.end}`;
    const sized = bySize.get(key);
    if (sized) sized.judged.push(judged);
    else bySize.set(key, { place, judged: [judged] });
  }
  return bySize;
}

/** Begins with a word: beside the size, a number would be read as part of it. */
function label(judged: readonly JudgedCircuit[]): string {
  const { overloaded, dropPercent } = ofWorstDrop(judged).result.drop;
  const drop = `drop ${overloaded ? "at least " : ""}${withUnit(dropPercent, "%")}`;
  const least = leastSpare(judged);
  const allJudged = judged.every(({ result }) => result.ampacity.judged);
  return [drop, least === undefined ? "" : spareInWords(least), allJudged ? "" : "ampacity not judged"]
    .filter((part) => part !== "")
    .join(", ");
}

function spareInWords(spareA: number): string {
  return spareA < 0 ? `${withUnit(-spareA, "A")} too much` : `${withUnit(spareA, "A")} spare`;
}

function tooltip(judged: readonly JudgedCircuit[]): string {
  const { circuit, result } = ofWorstDrop(judged);
  const { drop, ampacity } = result;
  const [percent, limit] = tellApart(drop.dropPercent, drop.dropLimitPercent);
  const carries = ampacity.judged
    ? carriedInWords(circuit.loadA, ampacity.ampacityA)
    : `carries ${withUnit(circuit.loadA, "A")}; what it may carry was not judged`;
  const one = `${plainWords(circuit.name)}: ${carries}, loses ${drop.overloaded ? "at least " : ""}${withUnit(drop.dropV, "V")}, ${percent} %, over the round trip; limit ${limit} %.`;
  const others = several(judged.length - 1, "other circuit");
  return others === ""
    ? one
    : `${one} This size also serves ${others}; the worst drop and the least spare are shown.`;
}

function carriedInWords(loadA: number, ampacityA: number): string {
  const [load, most] = tellApart(loadA, ampacityA);
  return `carries ${load} A, may carry ${most} A`;
}

/** A size without a circuit is no size of the plan: there is always one. */
function ofWorstDrop(judged: readonly JudgedCircuit[]): JudgedCircuit {
  return worstDrop(judged.map((one) => ({ ...one.result.drop, one })))!.one;
}

/** Undefined where the ampacity of none of them could be judged. */
function leastSpare(judged: readonly JudgedCircuit[]): number | undefined {
  const spares = judged.flatMap(({ circuit, result: { ampacity } }) =>
    ampacity.judged ? [ampacity.ampacityA - circuit.loadA] : [],
  );
  return spares.length > 0 ? Math.min(...spares) : undefined;
}
