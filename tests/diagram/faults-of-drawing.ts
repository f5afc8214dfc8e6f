import { SaxesParser } from "saxes";
import type { Drawing } from "../../library/documents/diagram/drawing.ts";
import type { Judgement } from "../../library/judge.ts";
import { displayName } from "../../library/model/display-name.ts";
import { passesCurrentOn } from "../../library/model/part-roles.ts";
import { descriptorOf } from "../../library/model/parts/index.ts";

/*
 * The faults of a wiring diagram that an electrician sees at a glance, counted in its SVG (drawn for the screen, where classes
 * name the polarities). Which end of a conductor is upstream follows from the plan's topology, not from the drawing code.
 */

export interface DrawingFaults {
  /** A conductor or lead that touches or crosses a bar of the other polarity. */
  readonly barCrossings: readonly string[];
  /** Two conductors that lie on one another over a length: they look like one. */
  readonly sharedTracks: readonly string[];
  /** A conductor that runs through the symbol or the words of a part, and parts on one another. */
  readonly overlaps: readonly string[];
  /** A conductor whose downstream end is left of its upstream end. */
  readonly againstFlow: readonly string[];
  /** A conductor that is much longer than the way between its ends. */
  readonly detours: readonly string[];
  /** A panel that a conductor feeds from the side of its branches. */
  readonly fedFromBehind: readonly string[];
  /** The number of places where two conductors cross. */
  readonly crossings: number;
  /** Conductors drawn. */
  readonly conductors: number;
}

type Point = readonly [x: number, y: number];
type Segment = readonly [Point, Point];

interface DrawnConductor {
  readonly id: string;
  readonly polarity: string;
  /** From one end to the other; a device interrupts it. */
  readonly points: Point[];
}

interface DrawnSymbol {
  readonly id: string;
  readonly segments: Segment[];
  readonly dots: Point[];
}

export function faultsOf(plan: Judgement, { svg, elements }: Drawing): DrawingFaults {
  const { conductors, symbols } = readBack(svg);
  const boxes = elements.filter(({ kind }) => kind === "part");
  const nameOf = new Map(elements.map(({ id, name }) => [id, name]));
  const named = (id: string) => nameOf.get(id) ?? id;
  const bars = symbols.flatMap((symbol) => barsOf(symbol, conductors));
  const wires = [
    ...conductors.map(({ id, polarity, points }) => ({
      name: named(id),
      polarity,
      segments: segmentsOf(points),
    })),
    ...symbols.flatMap((symbol) =>
      leadsOf(symbol, conductors).map(({ segment, polarity, of }) => ({
        name: `lead of ${named(of)} at ${named(symbol.id)}`,
        polarity,
        segments: [segment],
      })),
    ),
  ];
  const barCrossings = bars.flatMap(({ of, polarity, segment }) =>
    wires
      .filter((wire) => opposite(wire.polarity, polarity))
      .filter(({ segments }) => segments.some((one) => touch(one, segment)))
      .map(({ name }) => `${name} on the ${polarity} bar of ${named(of)}`),
  );
  let crossings = 0;
  const sharedTracks: string[] = [];
  for (const [index, one] of conductors.entries()) {
    for (const other of conductors.slice(index + 1)) {
      for (const a of segmentsOf(one.points))
        for (const b of segmentsOf(other.points)) {
          if (cross(a, b)) crossings++;
          if (shareLength(a, b)) sharedTracks.push(`${named(one.id)} and ${named(other.id)}`);
        }
    }
  }
  const overlaps: string[] = [];
  for (const [index, one] of boxes.entries()) {
    for (const other of boxes.slice(index + 1))
      if (overlap(one.box, other.box)) overlaps.push(`${one.name} and ${other.name}`);
    for (const conductor of conductors)
      if (segmentsOf(conductor.points).some((segment) => through(segment, one.box)))
        overlaps.push(`${named(conductor.id)} through ${one.name}`);
  }
  const flow = flows(plan, elements, conductors);
  return {
    barCrossings,
    sharedTracks,
    overlaps,
    crossings,
    againstFlow: flow.filter(({ start, end }) => end[0] < start[0] - 1).map(({ name }) => name),
    detours: conductors
      .filter(({ points }) => lengthOf(points) > 1.5 * direct(points) + 80)
      .map(({ id }) => named(id)),
    fedFromBehind: fedFromBehind(plan, flow, boxes),
    conductors: conductors.length,
  };
}

/**
 * Conductors at different distances from the batteries, from upstream to downstream. Left out are those at a part in series
 * between two batteries, through which current flows either way.
 */
function flows(plan: Judgement, elements: Drawing["elements"], conductors: readonly DrawnConductor[]) {
  const { network, result } = plan.network!;
  const steps = {
    positive: stepsFromBatteries(plan, "positive"),
    negative: stepsFromBatteries(plan, "negative"),
  };
  const partOf = (terminal: number) => network.terminals[terminal]!.part;
  const directed = network.conductors.flatMap((conductor, index) => {
    const side = result.topology.conductorSides[index];
    if (side !== "positive" && side !== "negative") return [];
    const ends = [conductor.from, conductor.to].map((terminal) => portAt(plan, terminal));
    // A charger is upstream of all that it feeds; the return of a converter's input may be on either side of it.
    if (ends.includes("feeds")) {
      const [upstream, downstream] =
        ends[0] === "feeds" ? [conductor.from, conductor.to] : [conductor.to, conductor.from];
      return [{ conductor, upstream, downstream }];
    }
    if (ends.includes("draws") && side === "negative") return [];
    const [near, far] = [conductor.from, conductor.to].map((terminal) => steps[side].get(partOf(terminal)));
    if (near === undefined || far === undefined || near === far) return [];
    const [upstream, downstream] =
      near < far ? [conductor.from, conductor.to] : [conductor.to, conductor.from];
    return [{ conductor, upstream, downstream }];
  });
  const betweenBatteries = new Set(
    network.parts
      .filter(({ terminals }) => {
        const own = Object.values(terminals);
        return (
          own.length === 2 &&
          own.every((terminal) => directed.some(({ downstream }) => downstream === terminal))
        );
      })
      .filter((part) => passesCurrentOn(part))
      .map(({ index }) => index),
  );
  return directed.flatMap(({ conductor, upstream, downstream }) => {
    if ([upstream, downstream].some((terminal) => betweenBatteries.has(partOf(terminal)))) return [];
    const name = displayName(conductor.role === "return" ? `${conductor.name}, return` : conductor.name);
    const element = elements.find(
      ({ kind, records, name: called }) =>
        kind === "conductor" && called === name && records[0] === conductor.record,
    );
    const { points } = conductors.find(({ id }) => id === element?.id)!;
    const [one, other] = [points[0]!, points.at(-1)!];
    const boxOf = (terminal: number) => {
      const part = network.parts[partOf(terminal)]!;
      return elements.find(
        ({ kind, name: called, records }) =>
          kind === "part" && called === displayName(part.name) && records[0] === part.record,
      )!.box;
    };
    const [above, below] = [boxOf(upstream), boxOf(downstream)];
    const turned =
      distance(one, above) + distance(other, below) > distance(other, above) + distance(one, below);
    return [{ name, upstream, downstream, start: turned ? other : one, end: turned ? one : other }];
  });
}

/** Whether a charger feeds or draws at a terminal. */
function portAt(plan: Judgement, terminal: number): "feeds" | "draws" | undefined {
  const { parts, terminals } = plan.network!.network;
  const { part, name } = terminals[terminal]!;
  const { ports, chargesWith } = descriptorOf(parts[part]!);
  if (chargesWith === undefined) return undefined;
  return ports.find(({ positive, negative }) => positive === name || negative === name)?.does;
}

/** By part: the number of conductors of that side from the nearest battery. Loads and converters pass no current on. */
function stepsFromBatteries(plan: Judgement, side: "positive" | "negative"): ReadonlyMap<number, number> {
  const { network, result } = plan.network!;
  const steps = new Map<number, number>(
    network.parts.filter(({ kind }) => kind === "battery").map(({ index }) => [index, 0]),
  );
  const order = [...steps.keys()];
  for (const part of order) {
    if (steps.get(part)! > 0 && !passesCurrentOn(network.parts[part]!)) continue;
    for (const [index, { from, to }] of network.conductors.entries()) {
      if (result.topology.conductorSides[index] !== side) continue;
      const [one, other] = [from, to].map((terminal) => network.terminals[terminal]!.part) as [
        number,
        number,
      ];
      const next = one === part ? other : other === part ? one : part;
      if (steps.has(next)) continue;
      steps.set(next, steps.get(part)! + 1);
      order.push(next);
    }
  }
  return steps;
}

function fedFromBehind(
  plan: Judgement,
  flow: ReturnType<typeof flows>,
  boxes: Drawing["elements"],
): readonly string[] {
  const { network } = plan.network!;
  return flow.flatMap(({ name, downstream, end }) => {
    const part = network.parts[network.terminals[downstream]!.part]!;
    if (part.kind !== "fusePanel") return [];
    const { box } = boxes.find(
      (one) => one.name === displayName(part.name) && one.records[0] === part.record,
    )!;
    return end[0] > box.x + box.width / 2 ? [`${name} at ${part.name}`] : [];
  });
}

/** Upright strokes of a symbol on which leads join with a dot. */
function barsOf(symbol: DrawnSymbol, conductors: readonly DrawnConductor[]) {
  const leads = leadsOf(symbol, conductors);
  return symbol.segments.flatMap((segment) => {
    const [[x, y1], [x2, y2]] = segment;
    if (x !== x2 || y1 === y2) return [];
    const [top, bottom] = [Math.min(y1, y2), Math.max(y1, y2)];
    const dots = symbol.dots.filter(
      (dot) => near(dot[0], x) && dot[1] >= top - 0.5 && dot[1] <= bottom + 0.5,
    );
    const lead = leads.find(({ segment: [, end] }) => dots.some((dot) => same(dot, end)));
    return lead ? [{ of: symbol.id, polarity: lead.polarity, segment }] : [];
  });
}

/** Level strokes of a symbol that begin where a conductor ends: from there inwards. */
function leadsOf(symbol: DrawnSymbol, conductors: readonly DrawnConductor[]) {
  return symbol.segments.flatMap(([one, other]) => {
    if (one[1] !== other[1]) return [];
    for (const [outer, inner] of [
      [one, other],
      [other, one],
    ] as const) {
      const conductor = conductors.find(
        ({ points }) => same(points[0]!, outer) || same(points.at(-1)!, outer),
      );
      if (conductor)
        return [{ segment: [outer, inner] as Segment, polarity: conductor.polarity, of: conductor.id }];
    }
    return [];
  });
}

function readBack(svg: string) {
  const conductors: DrawnConductor[] = [];
  const symbols: DrawnSymbol[] = [];
  const open: { readonly id: string | undefined; readonly classes: string }[] = [];
  const parser = new SaxesParser();
  parser.on("opentag", ({ name, attributes }) => {
    const { class: classes = "", "data-element": id } = attributes;
    const around = open.at(-1);
    if (name === "g") {
      open.push({ id, classes });
      const polarity = /loomwright-polarity-(\w+)/.exec(classes)?.[1];
      if (id !== undefined && polarity) conductors.push({ id, polarity, points: [] });
      if (id !== undefined && classes.includes("loomwright-part"))
        symbols.push({ id, segments: [], dots: [] });
      return;
    }
    const symbol = around?.classes.includes("loomwright-part") ? symbols.at(-1) : undefined;
    if (name === "path") {
      // The mark of a finding is beside its conductor or part.
      if (attributes.stroke?.includes("-mark")) return;
      const points = pointsOf(attributes.d!);
      if (symbol) symbol.segments.push(...segmentsOf(points));
      else if (around?.id !== undefined && conductors.at(-1)?.id === around.id)
        conductors.at(-1)!.points.push(...points);
    }
    if (name === "circle" && symbol && attributes.stroke === undefined)
      symbol.dots.push([Number(attributes.cx), Number(attributes.cy)]);
  });
  parser.on("closetag", ({ name }) => {
    if (name === "g") open.pop();
  });
  parser.write(svg).close();
  return { conductors, symbols };
}

function pointsOf(path: string): Point[] {
  return [...path.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);
}

function segmentsOf(points: readonly Point[]): Segment[] {
  return points.slice(1).map((to, index) => [points[index]!, to]);
}

function opposite(one: string, other: string): boolean {
  return (one === "positive" && other === "negative") || (one === "negative" && other === "positive");
}

function near(one: number, other: number): boolean {
  return Math.abs(one - other) < 0.05;
}

function same(one: Point, other: Point): boolean {
  return near(one[0], other[0]) && near(one[1], other[1]);
}

function spanOf([[x1, y1], [x2, y2]]: Segment) {
  return { left: Math.min(x1, x2), right: Math.max(x1, x2), top: Math.min(y1, y2), bottom: Math.max(y1, y2) };
}

/** Level and upright segments that have a point in common. */
function touch(one: Segment, other: Segment): boolean {
  const [a, b] = [spanOf(one), spanOf(other)];
  return (
    a.left <= b.right + 0.5 && b.left <= a.right + 0.5 && a.top <= b.bottom + 0.5 && b.top <= a.bottom + 0.5
  );
}

/** A level segment and an upright one that cross inside both. */
function cross(one: Segment, other: Segment): boolean {
  const [a, b] = [spanOf(one), spanOf(other)];
  const inside = (level: typeof a, upright: typeof a) =>
    near(level.top, level.bottom) &&
    near(upright.left, upright.right) &&
    upright.left > level.left + 0.05 &&
    upright.left < level.right - 0.05 &&
    level.top > upright.top + 0.05 &&
    level.top < upright.bottom - 0.05;
  return inside(a, b) || inside(b, a);
}

function shareLength(one: Segment, other: Segment): boolean {
  const [a, b] = [spanOf(one), spanOf(other)];
  const level = near(a.top, a.bottom) && near(b.top, b.bottom) && Math.abs(a.top - b.top) < 2;
  const upright = near(a.left, a.right) && near(b.left, b.right) && Math.abs(a.left - b.left) < 2;
  return (
    (level && Math.min(a.right, b.right) - Math.max(a.left, b.left) > 2) ||
    (upright && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 2)
  );
}

type Rect = Drawing["elements"][number]["box"];

function overlap(one: Rect, other: Rect): boolean {
  return (
    one.x < other.x + other.width - 1 &&
    other.x < one.x + one.width - 1 &&
    one.y < other.y + other.height - 1 &&
    other.y < one.y + one.height - 1
  );
}

function through(segment: Segment, { x, y, width, height }: Rect): boolean {
  const { left, right, top, bottom } = spanOf(segment);
  return left < x + width - 1 && right > x + 1 && top < y + height - 1 && bottom > y + 1;
}

function distance([x, y]: Point, box: Rect): number {
  const dx = Math.max(box.x - x, 0, x - box.x - box.width);
  const dy = Math.max(box.y - y, 0, y - box.y - box.height);
  return dx + dy;
}

function lengthOf(points: readonly Point[]): number {
  return segmentsOf(points).reduce(
    (sum, [[x1, y1], [x2, y2]]) => sum + Math.abs(x2 - x1) + Math.abs(y2 - y1),
    0,
  );
}

function direct(points: readonly Point[]): number {
  return lengthOf([points[0]!, points.at(-1)!]);
}
