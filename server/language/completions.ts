import { type CompletionItem, CompletionItemKind, type Range } from "vscode-languageserver-types";
import { designCurrentA } from "../../library/analysis/design-current.ts";
import { restsOnUnknownLength } from "../../library/analysis/unknown-lengths.ts";
import { isDevice } from "../../library/model/part-roles.ts";
import { worthTelling } from "../../library/rules/current-through.ts";
import { sizeInWords } from "../../library/rules/fixes/sized-fix.ts";
import { messageOf } from "../../library/rules/message-of.ts";
import { ruleById } from "../../library/rules/registry.ts";
import type { JudgedPlan, JudgedRun } from "../../library/rules/rule.ts";
import { formatDistinct, withUnit } from "../../library/rules/wording/format-number.ts";
import { kindInWords } from "../../library/rules/wording/part-in-words.ts";
import type { CheckedPlan } from "../evaluate/checked-plan.ts";
import {
  type Choice,
  type DeviceChoice,
  deviceChoices,
  type RunChoice,
  ratingChoices,
  sizeChoices,
} from "./choices.ts";
import { type CompletionRequest, trials } from "./completion-trials.ts";
import { judgedInPlan } from "./judged-choices.ts";
import { editorWords, markdownWords } from "./plain-words.ts";

/** The place of a value that is being typed, in the editor's own text, complete or not. */
export interface TypedValue {
  readonly property: "gauge" | "mm2" | "protect" | "protectFarEnd" | "ratingA";
  /** Offsets of the text typed so far; empty if there is none. */
  readonly start: number;
  readonly end: number;
}

/**
 * The value under the cursor, if it looks like a size or a rating that is being typed. Only scans the line: half-typed text has
 * no reliable tree. It only proposes; a run decides whether this really is a value of a circuit.
 */
export function typedValue(text: string, offset: number): TypedValue | undefined {
  const before = text.slice(Math.max(0, offset - longestLine), offset);
  const found = before.match(/\b(gauge|mm2|protect|protectFarEnd|ratingA)["']?\s*:\s*(["']?[\w./]*)$/);
  if (!found) return undefined;
  const after = text.slice(offset).match(/^[\w./]*["']?/)?.[0] ?? "";
  return {
    property: found[1] as TypedValue["property"],
    start: offset - found[2]!.length,
    end: offset + after.length,
  };
}

/**
 * Sizes and ratings that are really made, each with its results, the best first. Empty if the rest of the circuit does not yet
 * state enough.
 */
export async function completions(request: CompletionRequest<TypedValue>): Promise<CompletionItem[]> {
  const { typed, positionAt } = request;
  const range = { start: positionAt(typed.start), end: positionAt(typed.end) };
  const closings = typed.property === "ratingA" ? [" } })", " })"] : [" })"];
  for await (const plan of trials(request, standIn[typed.property], closings)) {
    const choices = choicesAt(plan, request);
    if (choices) return items(choices, typed, range);
  }
  return [];
}

const standIn: Record<TypedValue["property"], string> = {
  // The thickest: a plan that is in order with it and with the thinnest choice is so with all between.
  gauge: '"4/0"',
  mm2: "150",
  protect: "30",
  protectFarEnd: "30",
  ratingA: "30",
};

/** Undefined if the cursor is on no such value of a circuit, or of a fuse or breaker, that could be judged. */
function choicesAt(
  plan: CheckedPlan,
  { uri, typed }: CompletionRequest<TypedValue>,
): readonly (RunChoice | DeviceChoice)[] | undefined {
  const spot = plan.at(uri, typed.start);
  if (!spot || spot.path.at(-1) !== typed.property) return undefined;
  const records = new Set([spot.record, ...spot.alsoSets]);
  const { judgement } = plan;
  const { network } = judgement;
  const isUnknown = network && [...records].some((record) => restsOnUnknownLength(network, record));
  const inPlan = <Any extends Choice>(choices: readonly Any[]) => {
    const judged = judgedInPlan(choices, plan, {
      records,
      path: spot.path,
      standIn: standIn[typed.property],
    });
    return isUnknown ? judged.map((choice): Any => ({ ...choice, inPlan: "unknown" })) : judged;
  };
  const circuit = judgedOf(judgement, records)?.circuit;
  if (!circuit) {
    const device = network?.network.parts.filter(isDevice).find(({ record }) => records.has(record));
    return device && network && inPlan(deviceChoices(judgement, network, device));
  }
  const choices = isSize(typed.property)
    ? sizeChoices(circuit, network?.network)
    : ratingChoices(circuit, spot.path[0] === "protectFarEnd" ? "protectionFarEnd" : "protection");
  // Before anything flows there is nothing to judge.
  return circuit.inNetwork && choices.some(flows) ? inPlan(choices) : choices;
}

/** If one value serves several circuits, the one with the largest load represents all. */
function judgedOf({ circuits }: JudgedPlan, records: ReadonlySet<number>): JudgedRun | undefined {
  return circuits
    .filter(({ circuit }) => records.has(circuit.record))
    .sort((one, other) => other.circuit.loadA - one.circuit.loadA)[0];
}

function items(
  choices: readonly (RunChoice | DeviceChoice)[],
  typed: TypedValue,
  range: Range,
): CompletionItem[] {
  return bestFirst(choices, typed).map((choice, place) => ({
    label: editorWords(choice.written),
    labelDetails: { description: editorWords(inShort(choice, typed)) },
    kind: CompletionItemKind.Value,
    detail: editorWords(verdict(choice)),
    documentation: { kind: "markdown", value: inLong(choice, typed) },
    sortText: String(place).padStart(3, "0"),
    filterText: choice.written,
    textEdit: { range, newText: choice.written },
    ...(place === 0 && choice.faults.length === 0 ? { preselect: true } : {}),
  }));
}

/**
 * Those within all limits first: for sizes the thinnest, for ratings the smallest that reaches the aim. Then the others, best
 * first: fewest faults, then for sizes the thicker, for ratings the smaller.
 */
function bestFirst<Any extends Choice>(choices: readonly Any[], typed: TypedValue): Any[] {
  const good = choices.filter(({ faults }) => faults.length === 0);
  const others = choices.filter(({ faults }) => faults.length > 0);
  const byNearness = isSize(typed.property) ? others.toReversed() : others;
  return [...good, ...byNearness.toSorted((one, other) => one.faults.length - other.faults.length)];
}

/** Fits the initial width of the list: longer lines are cut off at their end, and a number without its end is a wrong number. */
function inShort(choice: RunChoice | DeviceChoice, { property }: TypedValue): string {
  const { faults } = choice;
  const worst = faults.some(({ severity }) => severity === "error") ? "error" : "warning";
  if (faults.length === 0 && !flows(choice)) return nothingFlows;
  const verdict = faults.length > 0 ? worst : choice.inPlan === "judged" ? "limits met" : "not judged";
  if ("part" in choice) return `${verdict}: ${shareOfLoad(choice.range, choice)}`;
  const { result, circuit } = choice;
  if (!isSize(property)) return `${verdict}: ${shareOfLoad(result.protection, statedAt(circuit, property))}`;
  const { drop } = result;
  const designA = designCurrentA(circuit);
  const spare = margin(designA, result);
  if (circuit.word === "cable") return `${verdict}: ${withUnit(designA, "A")}, ${spare}`;
  if (!drop.judged) return `${verdict}: drop not judged, ${spare}`;
  return `${verdict}: drop ${drop.overloaded ? "≥ " : ""}${withUnit(drop.dropPercent, "%")}, ${spare}`;
}

/** In words only: the editor breaks lines inside numbers when it unfolds it. */
function verdict(choice: RunChoice | DeviceChoice): string {
  if (choice.faults.length > 0) return titlesOf(choice.faults);
  if (!flows(choice)) return `${nothingFlows}, so no limit of a current is judged`;
  return choice.inPlan === "judged"
    ? "within all limits checked"
    : "within its own limits, the rest is not judged";
}

/** Without a current every size and rating is within its limits, and to say so would mislead. */
function flows(choice: RunChoice | DeviceChoice): boolean {
  return (
    worthTelling({ currentA: "part" in choice ? choice.range.minA : choice.circuit.loadA, scenario: 0 }) !==
    undefined
  );
}

const nothingFlows = "nothing flows yet";

function isSize(property: TypedValue["property"]): boolean {
  return property === "gauge" || property === "mm2";
}

function statedAt(
  circuit: RunChoice["circuit"],
  property: TypedValue["property"],
): { ratingA: number } | null {
  return property === "protectFarEnd" ? circuit.protectionFarEnd : circuit.protection;
}

function titlesOf(faults: Choice["faults"]): string {
  return [...new Set(faults.map(({ rule }) => ruleById(rule)?.title ?? rule))].join("; ");
}

function margin(designA: number, { ampacity }: JudgedRun["result"]): string {
  if (!ampacity.judged) return "ampacity not judged";
  const spareA = ampacity.ampacityA - designA;
  return spareA < 0 ? `${withUnit(-spareA, "A")} too much` : `${withUnit(spareA, "A")} spare`;
}

function shareOfLoad({ minA }: DeviceChoice["range"], stated: { ratingA: number } | null): string {
  return minA > 0 && stated ? `${withUnit((stated.ratingA / minA) * 100, "%")} of the load` : "";
}

function inLong(choice: RunChoice | DeviceChoice, typed: TypedValue): string {
  const lines = [
    ...("part" in choice ? deviceInLong(choice) : runInLong(choice, typed)),
    choice.inPlan === "unknown" && choice.faults.length === 0 ? rest : "",
  ];
  return lines.filter((line) => line !== "").join("\n\n");
}

function deviceInLong({ part, ratingA, range, faults }: DeviceChoice): string[] {
  const share = shareOfLoad(range, { ratingA });
  return [
    `**${markdownWords(part.name)}**: ${kindInWords(part)}`,
    share === "" ? "" : `A rating of ${withUnit(ratingA, "A")} is ${share}.`,
    range.maxA === undefined
      ? ""
      : `The thinnest conductor that ends at it may carry ${withUnit(range.maxA, "A")}.`,
    // Titles only: a message names a way out that depends on the currents of other runs.
    ...new Set(faults.map(({ rule }) => `- ${ruleById(rule)?.title ?? rule}`)),
  ];
}

function runInLong({ circuit, result, faults }: RunChoice, { property }: TypedValue): string[] {
  const { drop, ampacity } = result;
  const stated = isSize(property) ? null : statedAt(circuit, property);
  return [
    `**${markdownWords(circuit.name)}** on ${sizeInWords(circuit.conductor)}`,
    stated
      ? `A rating of ${withUnit(stated.ratingA, "A")} is ${shareOfLoad(result.protection, stated)}.`
      : "",
    dropInWords(circuit, drop),
    ampacity.judged
      ? carriedInWords(designCurrentA(circuit), ampacity.ampacityA)
      : "Its ampacity was not judged.",
    ...faults.map((fault) => `- ${markdownWords(messageOf(fault))}`),
  ];
}

function dropInWords({ word }: RunChoice["circuit"], drop: RunChoice["result"]["drop"]): string {
  if (!drop.judged) return "Its drop was not judged, because its length is not known.";
  const atLeast = drop.overloaded ? "at least " : "";
  const [percent, limit] = formatDistinct(drop.dropPercent, drop.dropLimitPercent);
  return word === "cable"
    ? `Drop ${atLeast}${withUnit(drop.dropV, "V")}, ${withUnit(drop.dropPercent, "%")}.`
    : `Drop ${atLeast}${withUnit(drop.dropV, "V")}, ${percent} %; limit ${limit} %.`;
}

/** Judging a whole network for each value of a list would be too much. */
const rest = "_Its effect on the rest of the network is checked once it is written._";

function carriedInWords(loadA: number, ampacityA: number): string {
  const [load, most] = formatDistinct(loadA, ampacityA);
  return `Carries ${load} A; may carry ${most} A.`;
}

/** No value is further behind its property's name than this. */
const longestLine = 200;
