import { descriptorOf } from "../../model/parts/index.ts";
import { listInWords } from "../../rules/wording/part-in-words.ts";
import type { FoundHere, Schematic, SchematicLine, SchematicPart, SymbolName } from "./schematic.ts";
import { sentences } from "./wiring-schematic.ts";

/**
 * The whole system at a glance: the two conductors of a circuit are one line. Cables of the return side are left out, with the
 * bars, shunts and metal that only they reach. Notices state the omissions, and the findings there are kept.
 */
export function oneLineSchematic(wiring: Schematic): Schematic {
  const returns = returnOfCircuits(wiring);
  const hidden = new Set<number>(returns.values());
  for (const [index, line] of wiring.lines.entries())
    if (line.polarity === "negative" && !line.ofCircuit) hidden.add(index);
  const used = partsOf(wiring.lines.filter((_, index) => !hidden.has(index)));
  const touched = partsOf(wiring.lines);
  const stays = ({ symbol }: SchematicPart, index: number) =>
    used.has(index) || !touched.has(index) || !isOfReturnSide(symbol);
  const kept = wiring.parts
    .map((part, index) => (stays(part, index) ? index : -1))
    .filter((index) => index >= 0);
  const newIndex = new Map(kept.map((old, index) => [old, index]));
  const moved = movedFindings(wiring, hidden, returns, newIndex);
  const lines = wiring.lines.flatMap((line, index): SchematicLine[] => {
    if (hidden.has(index)) return [];
    const other = returns.get(index);
    const merged = other === undefined ? line : asPair(line, wiring.lines[other]!);
    return [
      {
        ...merged,
        from: { ...merged.from, part: newIndex.get(merged.from.part)! },
        to: { ...merged.to, part: newIndex.get(merged.to.part)! },
      },
    ];
  });
  return {
    lines,
    parts: kept.map((old) => withFindings(wiring.parts[old]!, moved.byPart.get(old) ?? [])),
    notices: [...wiring.notices, ...leftOut(wiring, newIndex), ...unplaced(moved.unplaced)],
  };
}

/** By index of the positive conductor of a circuit: the index of its return. */
function returnOfCircuits({ lines }: Schematic): ReadonlyMap<number, number> {
  const positives = new Map<number, number>();
  const pairs = new Map<number, number>();
  for (const [index, { ofCircuit, records, polarity }] of lines.entries()) {
    if (!ofCircuit) continue;
    const record = records[0]!;
    if (polarity === "positive") positives.set(record, index);
    else if (positives.has(record)) pairs.set(positives.get(record)!, index);
  }
  return pairs;
}

function asPair(positive: SchematicLine, negative: SchematicLine): SchematicLine {
  const found = [...positive.found, ...negative.found];
  const number = [positive.number, negative.number].filter(Boolean).join(", ");
  return {
    ...positive,
    ...{ found, number },
    polarity: "pair",
    // A line for two conductors has no colour of its own.
    colour: "",
    description: `${positive.description} With its return. ${sentencesOnly(negative.found)}`.trimEnd(),
  };
}

function sentencesOnly(found: readonly FoundHere[]): string {
  return found.length === 0 ? "" : sentences("Its return", found);
}

/** Findings on an omitted cable move to the part that it belongs to: the one that is neither bar nor metal. */
function movedFindings(
  { lines, parts }: Schematic,
  hidden: ReadonlySet<number>,
  returns: ReadonlyMap<number, number>,
  newIndex: ReadonlyMap<number, number>,
): { readonly byPart: ReadonlyMap<number, readonly FoundHere[]>; readonly unplaced: readonly FoundHere[] } {
  const merged = new Set(returns.values());
  const byPart = new Map<number, FoundHere[]>();
  const unplaced = parts.flatMap(({ found }, index) => (newIndex.has(index) ? [] : found));
  for (const index of hidden) {
    const { found, name, from, to } = lines[index]!;
    if (found.length === 0 || merged.has(index)) continue;
    const shown = [from.part, to.part].filter((part) => newIndex.has(part));
    const home = shown.find((part) => !isOfReturnSide(parts[part]!.symbol)) ?? shown[0];
    const here = found.map((one) => ({ ...one, message: `${name}: ${one.message}` }));
    if (home === undefined) for (const one of here) unplaced.push(one);
    else byPart.set(home, [...(byPart.get(home) ?? []), ...here]);
  }
  return { byPart, unplaced };
}

function withFindings(part: SchematicPart, more: readonly FoundHere[]): SchematicPart {
  if (more.length === 0) return part;
  return {
    ...part,
    found: [...part.found, ...more],
    description: `${part.description} ${more.map(({ message }) => message).join(" ")}`,
  };
}

function leftOut({ parts }: Schematic, newIndex: ReadonlyMap<number, number>): readonly string[] {
  const names = parts.filter((_, index) => !newIndex.has(index)).map(({ name }) => name);
  if (names.length === 0) return [];
  return [
    `The return side is not drawn in this view, nor are the parts on it alone: ${listInWords(names, 12)}.`,
  ];
}

function unplaced(found: readonly FoundHere[]): readonly string[] {
  const open = found.filter(({ accepted }) => !accepted).length;
  if (open === 0) return [];
  return [`${open} of the findings ${open === 1 ? "is" : "are"} about elements that this view leaves out.`];
}

function partsOf(lines: readonly SchematicLine[]): ReadonlySet<number> {
  return new Set(lines.flatMap(({ from, to }) => [from.part, to.part]));
}

/** A part that may be left out if only return conductors land on it; a panel feeds circuits, and stays. */
function isOfReturnSide(symbol: SymbolName): boolean {
  if (symbol === "motor" || symbol === "supply") return false;
  const { role, poles } = descriptorOf({ kind: symbol });
  return (role === "passes current on" || role === "metal") && poles === undefined;
}
