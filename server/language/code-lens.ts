import type { CodeLens } from "vscode-languageserver-types";
import { networkStateInWords } from "../../library/documents/network-summary.ts";
import {
  dropsOf,
  dropsWithoutVerdict,
  withoutVerdictInWords,
  worstDrop,
  worstDropInWords,
} from "../../library/documents/worst-drop.ts";
import type { SourceRange } from "../evaluate/checked-plan.ts";
import type { Uri } from "../evaluate/workspace.ts";
import { contentsInWords, countsInWords, countsOf } from "./counts.ts";
import { editorWords } from "./plain-words.ts";
import type { PlanInView } from "./plan-in-view.ts";

/**
 * One line over a plan: the numbers of circuits, parts, cables and findings, and the worst drop. Only in the plan's root file.
 */
export function codeLens(view: PlanInView, uri: Uri): CodeLens[] {
  if (uri !== view.plan.root) return [];
  const start = view.span(placeOfLens(view))?.start ?? { line: 0, character: 0 };
  return [{ range: { start, end: start }, command: { title: editorWords(title(view)), command: "" } }];
}

function title(view: PlanInView): string {
  const counts = countsOf(view.plan);
  const { judgement } = view.plan;
  const parts = [contentsInWords(counts) || "no circuits yet", countsInWords(counts)];
  const worst = worstDrop(dropsOf(judgement));
  if (worst) parts.push(worstDropInWords(worst, worst.name));
  const unknown = withoutVerdictInWords(dropsWithoutVerdict(judgement));
  if (unknown !== "") parts.push(unknown);
  const network = networkStateInWords(judgement);
  if (network !== "") parts.push(network);
  if (judgement.problems.length > 0) parts.push("not checked to the end");
  if (!view.current) parts.push("as of the last complete text");
  return parts.join(" · ");
}

/** Over the import of the library, else over `build`, the first part or the first circuit, else at the top. */
function placeOfLens({ plan, textAt }: PlanInView): SourceRange {
  const whole = { uri: plan.root, start: 0, end: Number.MAX_SAFE_INTEGER };
  const importAt = (textAt(whole) ?? "").search(/^import\b[^;]*?["']loomwright["']/m);
  if (importAt >= 0) return { uri: plan.root, start: importAt, end: importAt };
  const { build, circuits, network } = plan.judgement.model;
  const record = build.record ?? network?.parts[0]?.record ?? circuits[0]?.record;
  const call = record === undefined ? undefined : plan.callOf(record);
  return call?.uri === plan.root ? call : { uri: plan.root, start: 0, end: 0 };
}
