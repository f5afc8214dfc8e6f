import { type CompletionItem, CompletionItemKind } from "vscode-languageserver-types";
import { endsAt, mountedAt } from "../../library/analysis/network/topology/ends-at.ts";
import { networkGraph } from "../../library/analysis/network/topology/network-graph.ts";
import { netPolarities, terminalPolarities } from "../../library/analysis/network/topology/polarity.ts";
import { isOfCircuit } from "../../library/documents/network-summary.ts";
import type { Network, Part } from "../../library/model/network.ts";
import { descriptorOf } from "../../library/model/parts/index.ts";
import { separatorOf } from "../../library/rules/wording/part-in-words.ts";
import type { CheckedPlan } from "../evaluate/checked-plan.ts";
import { referenceIn } from "../evaluate/provenance/references.ts";
import { type CompletionRequest, trials } from "./completion-trials.ts";
import { editorWords, markdownWords } from "./plain-words.ts";

/** The place of a terminal that is being typed: the text so far is `from`, `panel` or `panel.fe`. */
export interface TypedTerminal {
  readonly property: "from" | "to" | "returnTo";
  readonly start: number;
  readonly end: number;
}

/** The terminal under the cursor. Only scans the line: half-typed text has no reliable tree. */
export function typedTerminal(text: string, offset: number): TypedTerminal | undefined {
  const before = text.slice(Math.max(0, offset - longestLine), offset);
  const found = before.match(/\b(from|to|returnTo)\s*:\s*([\w$.]*)$/);
  if (!found) return undefined;
  const after = text.slice(offset).match(/^[\w$]*/)?.[0] ?? "";
  return {
    property: found[1] as TypedTerminal["property"],
    start: offset - found[2]!.length,
    end: offset + after.length,
  };
}

/** No terminal is further behind its property's name than this. */
const longestLine = 200;

/**
 * The terminals that may be joined at a place, each with the conductors that are there already; those with room first. Parts that
 * no variable in reach holds are left out. Empty if the place is in no cable or circuit.
 */
export async function terminalCompletions(
  request: CompletionRequest<TypedTerminal>,
): Promise<CompletionItem[]> {
  for await (const plan of trials(request, "undefined", [" })"])) {
    const items = itemsIn(plan, request);
    if (items) return items;
  }
  return [];
}

function itemsIn(
  plan: CheckedPlan,
  { uri, text, typed, positionAt }: CompletionRequest<TypedTerminal>,
): CompletionItem[] | undefined {
  const { model, network: judged } = plan.judgement;
  const network = judged?.network ?? model.remains?.sketch;
  const spot = plan.at(uri, typed.start);
  const run = spot && plan.records[spot.record];
  if (!network || (run?.word !== "cable" && run?.word !== "circuit")) return undefined;
  const names = plan.namesAt(uri, typed.start);
  const input = run.input as Readonly<Record<string, unknown>>;
  const choices =
    run.word === "circuit" && typed.property === "to"
      ? partChoices(network, names)
      : terminalChoices(network, names, mayJoin(network, run.word, typed.property, input));
  const already = text.slice(typed.start, typed.end);
  const dot = already.lastIndexOf(".");
  const range = { start: positionAt(typed.start + dot + 1), end: positionAt(typed.end) };
  return choices
    .filter(({ written }) => written.startsWith(already.slice(0, dot + 1)))
    .map(({ written, there }, place) => ({
      label: editorWords(written.slice(dot + 1)),
      labelDetails: { description: editorWords(inShort(there)) },
      kind: CompletionItemKind.Property,
      documentation: { kind: "markdown" as const, value: inLong(written, there) },
      // Before TypeScript's own list.
      sortText: `0${String(place).padStart(3, "0")}`,
      filterText: written.slice(dot + 1),
      textEdit: { range, newText: written.slice(dot + 1) },
    }));
}

interface TerminalChoice {
  readonly written: string;
  /** Names of the conductors there, and of the fuses and breakers mounted on it. */
  readonly there: readonly string[];
}

type Allowed = (terminal: number) => boolean;

function terminalChoices(
  network: Network,
  names: ReadonlyMap<number, string>,
  allowed: Allowed,
): TerminalChoice[] {
  const choices = network.terminals.flatMap(({ part, name }, terminal) => {
    const holder = network.parts[part]!;
    const variable = names.get(holder.record);
    if (variable === undefined || isOfCircuit(holder) || !allowed(terminal)) return [];
    const there = joinedAt(network, terminal);
    return [{ written: `${variable}.${name}`, there, hasRoom: there.length === 0 || collects(holder, name) }];
  });
  return withRoomFirst(choices);
}

/** Whole parts at which a circuit may end. */
function partChoices(network: Network, names: ReadonlyMap<number, string>): TerminalChoice[] {
  const choices = network.parts.flatMap((part) => {
    const variable = names.get(part.record);
    const { poles, ports } = descriptorOf(part);
    const ends = poles ?? ports[0];
    const terminals: Readonly<Record<string, number>> = part.terminals;
    const positive = ends && terminals[ends.positive];
    if (variable === undefined || positive === undefined || isOfCircuit(part)) return [];
    const there = joinedAt(network, positive);
    return [{ written: variable, there, hasRoom: there.length === 0 }];
  });
  return withRoomFirst(choices);
}

function withRoomFirst<Choice extends { readonly hasRoom: boolean }>(choices: readonly Choice[]): Choice[] {
  return [...choices.filter(({ hasRoom }) => hasRoom), ...choices.filter(({ hasRoom }) => !hasRoom)];
}

/** Many conductors meet there: a stud, the chassis, the branches of a panel and their returns. */
function collects(part: Part, terminal: string): boolean {
  const { role, collectsAt, opens, poles } = descriptorOf(part);
  return role === "metal" || (collectsAt !== undefined && !opens && terminal !== poles?.positive);
}

/** The terminals that the compiler and the check would take, by their polarity in the network as it is. */
function mayJoin(
  network: Network,
  word: "cable" | "circuit",
  property: TypedTerminal["property"],
  input: Readonly<Record<string, unknown>>,
): Allowed {
  const wiring = networkGraph(network);
  const sides = terminalPolarities(wiring, netPolarities(wiring));
  const sideOf = (terminal: number) => {
    const { side } = network.terminals[terminal]!;
    return side === "either" ? sides[terminal] : side;
  };
  if (word === "circuit")
    return (terminal) => sideOf(terminal) !== (property === "returnTo" ? "positive" : "negative");
  const reference = referenceIn(input[property === "from" ? "to" : "from"]);
  const other = network.terminals.findIndex(
    ({ part, name }) => network.parts[part]!.record === reference?.record && name === reference?.terminal,
  );
  if (other < 0) return () => true;
  const isBattery = (terminal: number) =>
    network.parts[network.terminals[terminal]!.part]!.kind === "battery";
  const areOpposite = (one: number, two: number) =>
    [sideOf(one), sideOf(two)].toSorted().join() === "negative,positive";
  return (terminal) =>
    terminal !== other &&
    network.terminals[terminal]!.part !== network.terminals[other]!.part &&
    (!areOpposite(terminal, other) || (isBattery(terminal) && isBattery(other)));
}

function joinedAt(network: Network, terminal: number): string[] {
  return [...endsAt(network, terminal), ...mountedAt(network, terminal)].map(({ name }) => name);
}

function inShort(there: readonly string[]): string {
  if (there.length === 0) return "no conductor yet";
  return there.length === 1 ? there[0]! : `${there.length} conductors`;
}

function inLong(written: string, there: readonly string[]): string {
  const shown = there.slice(0, mostShown);
  const more = there.length > shown.length ? [`${there.length - shown.length} more`] : [];
  const list = [...shown.map(markdownWords), ...more];
  const names = list.length === 0 ? "no conductor yet" : list.join(separatorOf(list));
  return `**${markdownWords(written)}**: connected to it: ${names}.`;
}

const mostShown = 12;
