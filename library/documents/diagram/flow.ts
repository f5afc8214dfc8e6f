import { type AnyPartDescriptor, descriptorOfWord } from "../../model/parts/index.ts";
import type { LineEnd, SchematicLine, SchematicPart, SymbolName } from "./schematic.ts";

/*
 * The direction in which each line is read: from left to right, from the sources to the loads. The layout puts the part at the
 * start of a line to the left of the part at its end.
 */

export type UndirectedLine = Omit<SchematicLine, "forward">;

/**
 * By line: whether it is read from its `from` to its `to`. Lines follow the current on the positive side, and run the same way on
 * the negative side. No circle arises, except through converters that charge one another.
 */
export function readsForward(
  parts: readonly SchematicPart[],
  lines: readonly UndirectedLine[],
): readonly boolean[] {
  const net: Net = { parts, lines, touching: linesByPart(parts, lines) };
  const batteries = batteriesInOrder(net);
  const ranks = ranksOf(net, batteries);
  // Batteries in their order, other parts in that of the plan: the same way for every line between two equal parts.
  const order = new Map(batteries.map((part, index) => [part, index - batteries.length]));
  const orderOf = (part: number) => order.get(part) ?? part;
  const forward = lines.map(({ from, to }) => {
    const [one, other] = [from, to].map((end) => stepsOut(parts[end.part]!, end, ranks)) as [number, number];
    return one === other ? orderOf(from.part) <= orderOf(to.part) : one < other;
  });
  turnCommonReturns(net, forward);
  leadThrough(net, forward, ranks, orderOf);
  return forward;
}

/** The side of a part that a terminal must be on, for any line that ends there; undefined: the side that the line comes from. */
export function fixedSide(symbol: SymbolName, terminal: string): "west" | "east" | undefined {
  const { role, ports } = descriptorOfSymbol(symbol);
  if (role !== "converter") return undefined;
  for (const { does, positive, negative } of ports) {
    if (terminal === positive) return does === "draws" ? "west" : "east";
    if (terminal === negative && does === "feeds") return "east";
  }
  return undefined;
}

interface Net {
  readonly parts: readonly SchematicPart[];
  readonly lines: readonly UndirectedLine[];
  /** By part: the lines that end there. */
  readonly touching: readonly (readonly number[])[];
}

interface Ranks {
  /** By part: the number of lines from the nearest battery; if no battery leads there, from another source; 0 if none does. */
  readonly rank: readonly number[];
  /** By part: the source that is nearest on its positive side. */
  readonly origin: readonly number[];
}

/** Greater further from the sources. A converter takes on one side and gives on the other. */
function stepsOut({ symbol }: SchematicPart, { part, terminal }: LineEnd, { rank }: Ranks): number {
  const { role, chargesWith, ports } = descriptorOfSymbol(symbol);
  switch (role) {
    case "source":
      return chargesWith === undefined ? -1 : -3;
    case "consumer":
      return beyondAll + rank[part]!;
    case "converter":
      return ports.some(
        ({ does, positive, negative }) => does === "draws" && [positive, negative].includes(terminal),
      )
        ? beyondAll - 1
        : -2;
    case "passes current on":
    case "metal":
      return rank[part]!;
  }
}

const beyondAll = 1e6;

/** The battery of an engine comes before those that are charged from it. */
function batteriesInOrder({ parts, lines, touching }: Net): readonly number[] {
  const batteries = parts.flatMap(({ symbol }, part) => (isBattery(symbol) ? [part] : []));
  const isOfEngine = (part: number) =>
    touching[part]!.some((line) => {
      const { role, chargesWith } = descriptorOfSymbol(parts[across(lines[line]!, part)]!.symbol);
      return role === "source" && chargesWith === "engine" && sideOf(lines[line]!) === "positive";
    });
  return [...batteries.filter(isOfEngine), ...batteries.filter((part) => !isOfEngine(part))];
}

/**
 * Each polarity is followed by itself, and a part that both reach comes after its neighbours of either: a panel with a return
 * straight to the battery is still behind the buses that feed it.
 */
function ranksOf(net: Net, batteries: readonly number[]): Ranks {
  const { parts } = net;
  const ranks = {
    rank: new Array<number>(parts.length).fill(-1),
    origin: new Array<number>(parts.length).fill(-1),
  };
  spread(net, batteries, ranks);
  // Where no battery leads, the outputs of converters and the other sources are the start.
  const others = parts.flatMap(({ symbol }, part) => {
    const { role } = descriptorOfSymbol(symbol);
    return role === "converter" || (role === "source" && ranks.rank[part] === -1) ? [part] : [];
  });
  spread(net, others, ranks);
  return { ...ranks, rank: ranks.rank.map((one) => Math.max(one, 0)) };
}

/** Gives a rank and an origin to the parts that have none yet and that the starts reach. */
function spread(
  net: Net,
  starts: readonly number[],
  { rank, origin }: { readonly rank: number[]; readonly origin: number[] },
): void {
  const { parts, lines, touching } = net;
  const isStart = new Set(starts);
  // A current that reaches a load or a charger does not go on through it.
  const goesOn = (part: number) => isStart.has(part) || passesCurrentOn(parts[part]!.symbol);
  const reached = sides.map((side) => {
    const seen = new Set(starts);
    const ahead = [...starts];
    for (let part = ahead.pop(); part !== undefined; part = ahead.pop()) {
      if (!goesOn(part)) continue;
      for (const line of touching[part]!) {
        const other = across(lines[line]!, part);
        if (sideOf(lines[line]!) !== side || seen.has(other) || rank[other] !== -1) continue;
        seen.add(other);
        ahead.push(other);
      }
    }
    return seen;
  });
  const arrived = sides.map(() => new Map<number, number>());
  const ready = [...starts];
  for (const start of starts) {
    rank[start] = 0;
    origin[start] = start;
  }
  const waiting: number[] = [];
  let held = 0;
  const nextWaiting = () => {
    while (held < waiting.length && rank[waiting[held]!] !== -1) held++;
    return waiting[held];
  };
  for (let next = 0; ; next++) {
    if (next === ready.length) {
      // Each part that is left comes after another of them: the one that was found first goes ahead.
      const part = nextWaiting();
      if (part === undefined) return;
      rank[part] = Math.max(...arrived.map((side) => side.get(part) ?? 0));
      ready.push(part);
    }
    const part = ready[next]!;
    if (!goesOn(part)) continue;
    for (const line of touching[part]!) {
      const other = across(lines[line]!, part);
      const side = sides.indexOf(sideOf(lines[line]!));
      if (rank[other] !== -1 || arrived[side]!.has(other)) continue;
      arrived[side]!.set(other, rank[part]! + 1);
      if (origin[other] === -1 || sides[side] === "positive") origin[other] = origin[part]!;
      const isLast = sides.every((_, one) => arrived[one]!.has(other) || !reached[one]!.has(other));
      if (isLast) rank[other] = rank[part]! + 1;
      (isLast ? ready : waiting).push(other);
    }
  }
}

/**
 * A converter with the negatives of both its sides on one bar: the bar is behind the converter, as it is behind other chargers.
 * Otherwise each would be both before and behind the other.
 */
function turnCommonReturns({ parts, lines, touching }: Net, forward: boolean[]): void {
  for (const [part, { symbol }] of parts.entries()) {
    if (descriptorOfSymbol(symbol).role !== "converter") continue;
    const own = touching[part]!.filter((line) => sideOf(lines[line]!) === "negative");
    const behind = new Set(
      own
        .filter((line) => (lines[line]!.from.part === part) === forward[line])
        .map((line) => across(lines[line]!, part)),
    );
    for (const line of own)
      if (behind.has(across(lines[line]!, part))) forward[line] = lines[line]!.from.part === part;
  }
}

/** A part in series between two batteries, such as a charging relay: read in at one terminal and out at the other. */
function leadThrough(
  { parts, lines, touching }: Net,
  forward: boolean[],
  { rank, origin }: Ranks,
  orderOf: (part: number) => number,
): void {
  const arrivesAt = (line: number, part: number) => {
    const { from, to } = lines[line]!;
    return from.part === part ? from.terminal : to.terminal;
  };
  const comesIn = (line: number, part: number) => (lines[line]!.to.part === part) === forward[line];
  const turned = new Set<number>();
  const ahead = parts.map((_, part) => part);
  for (let part = ahead.pop(); part !== undefined; part = ahead.pop()) {
    const here = part;
    const { symbol, terminals } = parts[here]!;
    if (turned.has(here) || terminals.length !== 2 || !passesCurrentOn(symbol)) continue;
    const own = touching[here]!;
    const [first, second] = terminals.map(({ name }) => own.filter((line) => arrivesAt(line, here) === name));
    if (!first?.length || !second?.length || !own.every((line) => comesIn(line, here))) continue;
    const [one, other] = [first, second].map((group) => across(lines[group[0]!]!, here)) as [number, number];
    const isBefore =
      origin[one] === origin[other]
        ? rank[one]! <= rank[other]!
        : orderOf(origin[one]!) < orderOf(origin[other]!);
    turned.add(here);
    for (const line of isBefore ? second : first) {
      forward[line] = !forward[line];
      ahead.push(across(lines[line]!, here));
    }
  }
}

const sides = ["positive", "negative"] as const;

function sideOf({ polarity }: UndirectedLine): (typeof sides)[number] {
  return polarity === "negative" ? "negative" : "positive";
}

function linesByPart(
  parts: readonly SchematicPart[],
  lines: readonly UndirectedLine[],
): readonly (readonly number[])[] {
  const touching: number[][] = parts.map(() => []);
  for (const [line, { from, to }] of lines.entries()) {
    touching[from.part]!.push(line);
    if (to.part !== from.part) touching[to.part]!.push(line);
  }
  return touching;
}

function across({ from, to }: UndirectedLine, part: number): number {
  return from.part === part ? to.part : from.part;
}

/** A source that does not charge others is charged by them. */
function isBattery(symbol: SymbolName): boolean {
  const { role, chargesWith } = descriptorOfSymbol(symbol);
  return role === "source" && chargesWith === undefined;
}

function passesCurrentOn(symbol: SymbolName): boolean {
  const { role } = descriptorOfSymbol(symbol);
  return role === "passes current on" || role === "metal";
}

/** A supply that the plan does not state is drawn as a battery is. */
function descriptorOfSymbol(symbol: SymbolName): AnyPartDescriptor {
  return descriptorOfWord(symbol === "supply" ? "battery" : symbol);
}
