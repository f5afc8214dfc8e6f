import { type DocumentSymbol, SymbolKind } from "vscode-languageserver-types";
import { isOfCircuit } from "../../library/documents/network-summary.ts";
import type { Part } from "../../library/model/network.ts";
import { isDevice } from "../../library/model/part-roles.ts";
import type { Protection, Run } from "../../library/model/run.ts";
import { sizeOfRunInWords } from "../../library/rules/fixes/sized-fix.ts";
import type { JudgedNetwork } from "../../library/rules/rule.ts";
import { formatExact } from "../../library/rules/wording/format-number.ts";
import { kindInWords } from "../../library/rules/wording/part-in-words.ts";
import type { Uri } from "../evaluate/workspace.ts";
import { loadInWords } from "./circuit-summary.ts";
import { editorWords } from "./plain-words.ts";
import type { PlanInView } from "./plan-in-view.ts";

/**
 * The records of a file, in the order of the plan: circuits, each with its load, size and protection; and for a network its
 * parts, beneath each the cables and circuits that begin at it, and its scenarios.
 */
export function documentSymbols(view: PlanInView, uri: Uri): DocumentSymbol[] {
  const outline = new Outline(view, uri);
  const { model, circuits, network } = view.plan.judgement;
  if (network) outline.addParts(network);
  const judged = new Map(circuits.map(({ circuit }) => [circuit.record, circuit]));
  for (const circuit of model.circuits) outline.addRun(judged.get(circuit.record) ?? circuit);
  if (network) outline.addCables(network, judged);
  if (network) outline.addScenarios(network);
  return outline.inOrder();
}

class Outline {
  readonly #view: PlanInView;
  readonly #uri: Uri;
  readonly #top: { readonly record: number; readonly symbol: DocumentSymbol }[] = [];
  /** By record of the part at the beginning of a run. */
  readonly #parts = new Map<number, DocumentSymbol>();
  /** By record of a run, the record of that part. */
  readonly #startsAt = new Map<number, number>();

  constructor(view: PlanInView, uri: Uri) {
    this.#view = view;
    this.#uri = uri;
  }

  addParts({ network: { parts, conductors, terminals } }: JudgedNetwork): void {
    for (const part of parts) {
      if (isOfCircuit(part)) continue;
      const symbol = this.#symbol(part.record, part.name, partDetail(part), SymbolKind.Module);
      if (!symbol) continue;
      this.#top.push({ record: part.record, symbol });
      this.#parts.set(part.record, symbol);
    }
    for (const { record, role, from } of conductors) {
      const start: Part | undefined = parts[terminals[from]!.part];
      if (role !== "return" && start) this.#startsAt.set(record, start.record);
    }
  }

  addRun(circuit: Run): void {
    const kind = circuit.word === "cable" ? SymbolKind.Interface : SymbolKind.Object;
    const symbol = this.#symbol(circuit.record, circuit.name, detail(circuit), kind);
    if (!symbol) return;
    const start = this.#parts.get(this.#startsAt.get(circuit.record) ?? -1);
    if (!start) this.#top.push({ record: circuit.record, symbol });
    else if (start.children) start.children.push(symbol);
    else start.children = [symbol];
  }

  addCables({ network: { conductors } }: JudgedNetwork, judged: ReadonlyMap<number, Run>): void {
    for (const { role, run } of conductors) {
      if (role === "cable") this.addRun(judged.get(run.record) ?? run);
    }
  }

  addScenarios({ network: { scenarios }, result }: JudgedNetwork): void {
    const states = new Map(result.scenarios.map(({ scenario, state }) => [scenario, state]));
    for (const [index, { record, name }] of scenarios.entries()) {
      if (record === undefined) continue;
      const solved = states.get(index) === "solved";
      const symbol = this.#symbol(
        record,
        name,
        solved ? "scenario" : "scenario, not solved",
        SymbolKind.Event,
      );
      if (symbol) this.#top.push({ record, symbol });
    }
  }

  inOrder(): DocumentSymbol[] {
    for (const { children } of this.#parts.values()) children?.sort(byPlace);
    return this.#top.sort((one, other) => one.record - other.record).map(({ symbol }) => symbol);
  }

  #symbol(record: number, name: string, detail: string, kind: SymbolKind): DocumentSymbol | undefined {
    const call = this.#view.plan.callOf(record);
    const range = call.uri === this.#uri ? this.#view.span(call) : undefined;
    if (!range) return undefined;
    return {
      name: editorWords(name) || (kind === SymbolKind.Object ? "circuit" : "without a name"),
      detail: editorWords(detail),
      kind,
      range,
      selectionRange: { start: range.start, end: range.start },
    };
  }
}

/** "fuse holder, 150 A": a protective device with its rating, as a circuit shows it. */
function partDetail(part: Part): string {
  const kind = kindInWords(part);
  return isDevice(part) ? `${kind}, ${formatExact(part.ratingA)} A` : kind;
}

/** The current is left out if it is unknown; for a cable, protection is given only if it has some: few need it. */
function detail(circuit: Run): string {
  const known = !circuit.loadIsLeast && (circuit.statesLoad || circuit.loadA > 0);
  const { protection, protectionFarEnd, word, inNetwork } = circuit;
  return [
    known ? loadInWords(circuit) : "",
    sizeOfRunInWords(circuit),
    word === "circuit" || protection
      ? protectionInWords(protection, inNetwork)
      : protectionFarEnd
        ? protectionInWords(protectionFarEnd, inNetwork)
        : "",
  ]
    .filter((part) => part !== "")
    .join(", ");
}

function byPlace(
  { range: { start: one } }: DocumentSymbol,
  { range: { start: other } }: DocumentSymbol,
): number {
  return one.line - other.line || one.character - other.character;
}

/** "protected at 50 A", as the plan gives it. In a network a device ahead of it may protect it. */
function protectionInWords(protection: Protection | null, inNetwork: boolean): string {
  if (protection) return `protected at ${formatExact(protection.ratingA)} A`;
  return inNetwork ? "no protection in it" : "no protection";
}
