import { metresPerInch } from "../../model/length-limits.ts";
import type { Body, BodyPlace, Channel, Layout, Rectangle, Side } from "../../model/placement/layout.ts";
import { middleOf } from "../../model/placement/middle-of.ts";
import type { MountingPosition } from "../../plan/place.ts";
import type { SurfaceOrientation } from "../../plan/surface.ts";

/** Parts without a place that are to be put on one surface. */
interface ArrangementTask {
  readonly layout: Layout;
  /** Index of the surface. */
  readonly surface: number;
  /** Indices of the bodies: each with a size, without a place, and with a turn in {@link turnsOn}. */
  readonly bodies: readonly number[];
  /** By lead index: the cross-section of its copper, mm²; 0 if it is not known. */
  readonly copperMm2: readonly number[];
  /** The places are distances in it: whole mm, or eighths of an inch. Absent: mm. */
  readonly unit?: "mm" | "in";
}

export interface ArrangedBody {
  /** Index of the body. */
  readonly body: number;
  /** Its outline as it is turned, mm from the top left corner of the surface. */
  readonly outline: Rectangle;
  readonly turnedDeg: Turn;
}

type Turn = 0 | 90 | 180 | 270;

/**
 * Places for parts on a surface: none overlaps another part or a channel, leaves the surface, or is in a place that is kept free or out
 * of reach; each keeps the air that it and its neighbours state, the greater of two that face each other, at least 10 mm, and the stated
 * distance of fixtures. Among those it looks for short conductors of much copper, level and upright between the middles of the parts. Parts that
 * have a place keep it. It is a suggestion: no arrangement is proved to be the best.
 *
 * Simulated annealing (Kirkpatrick, Gelatt and Vecchi 1983, from memory) from five starts with fixed seeds, by a number of steps and
 * never by a clock: the same task gives the same places on every machine.
 *
 * @returns Undefined if none of the starts found such places, which is no proof that there are none.
 */
export function arrange(task: ArrangementTask): readonly ArrangedBody[] | undefined {
  const search = arrangeInSteps(task);
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
  }
}

/** How far a search has come. */
interface SearchProgress {
  /** From 1. */
  readonly start: number;
  readonly starts: number;
}

/** The same search, which can be left between two steps of a few milliseconds. */
export function* arrangeInSteps(
  task: ArrangementTask,
): Generator<SearchProgress, readonly ArrangedBody[] | undefined> {
  const board = new Board(task);
  let best: readonly ArrangedBody[] | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (let start = 1; start <= starts; start++) {
    if (!(yield* anneal(board, seeded(start), { start, starts }))) continue;
    board.align();
    const copper = board.copper();
    if (copper < least) [best, least] = [board.arranged(), copper];
  }
  return best;
}

/** The turns in which a part may be mounted on a surface: as it states, else as it is drawn, or lying on any side of a floor. */
export function turnsOn(
  { mountingPositions }: Pick<Body, "mountingPositions">,
  orientation: SurfaceOrientation,
): readonly Turn[] {
  if (orientation !== "vertical") {
    const position: MountingPosition = orientation === "floor" ? "on its back" : "face down";
    return mountingPositions?.includes(position) === false ? [] : [0, 90];
  }
  if (!mountingPositions) return [0];
  return onWall.flatMap(([position, turn]) => (mountingPositions.includes(position) ? [turn] : []));
}

const onWall: readonly (readonly [MountingPosition, Turn])[] = [
  ["upright", 0],
  ["left side up", 90],
  ["upside down", 180],
  ["right side up", 270],
];

const eighthInchMm = (1_000 * metresPerInch) / 8;
const starts = 5;
const steps = 30_000;
/** As many are done without a pause. */
const stepsAtOnce = 250;
/** Every place is a multiple of the first, mm; random places and steps are multiples of the second. */
const gridsMm = { mm: [1, 10], in: [eighthInchMm, 4 * eighthInchMm] } as const;
/** Parts within this of one line are aligned, mm. */
const alignMm = 30;
/** Distance that a part keeps where less air is stated, mm: room for a hand and a conductor; common practice, no source. */
const apartMm = 10;
/** Overlaps that are less deep are none, mm: of lengths in inches, the last binary digits are rounded. */
const sameMm = 1e-6;

const sides = ["top", "right", "bottom", "left"] as const satisfies readonly Side[];

interface Obstacle {
  readonly outline: Rectangle;
  readonly air: Body["air"];
}

interface Link {
  readonly one: number;
  /** A piece too; -1 for an end that does not move, which is at `x`, `y`. */
  readonly other: number;
  readonly x: number;
  readonly y: number;
  readonly copperMm2: number;
}

/**
 * The pieces that move, and behind them the obstacles that do not, by index. Their edges are in typed arrays, because a search asks for
 * them a million times.
 */
class Board {
  readonly count: number;
  /** mm */
  readonly grid: number;
  readonly #fine: number;
  readonly #width: number;
  readonly #height: number;
  readonly #bodies: readonly Body[];
  readonly #turns: readonly (readonly Turn[])[];
  readonly #turn: Turn[];
  readonly #links: readonly Link[];
  readonly #linksOf: readonly (readonly Link[])[];
  /** Left, top, right and bottom edge of each, and then the same with its air. */
  readonly #edges: Float64Array;

  constructor({ layout, surface: index, bodies, copperMm2, unit = "mm" }: ArrangementTask) {
    const surface = layout.surfaces[index]!;
    [this.#fine, this.grid] = gridsMm[unit];
    this.count = bodies.length;
    this.#width = surface.width;
    this.#height = surface.height;
    this.#bodies = bodies.map((body) => layout.bodies[body]!);
    this.#turns = this.#bodies.map((body) => turnsOn(body, surface.orientation));
    this.#turn = this.#turns.map(([first]) => first!);
    const obstacles = obstaclesOn(layout, index);
    this.#edges = new Float64Array(8 * (bodies.length + obstacles.length));
    obstacles.forEach(({ outline, air }, at) => {
      this.#setEdges(bodies.length + at, outline, air);
    });
    this.#links = linksOf(layout, index, bodies, copperMm2);
    this.#linksOf = bodies.map((_, piece) =>
      this.#links.filter(({ one, other }) => one === piece || other === piece),
    );
  }

  get #all(): number {
    return this.#edges.length / 8;
  }

  #setEdges(at: number, { x, y, width, height }: Rectangle, air: Body["air"]): void {
    const { left = 0, top = 0, right = 0, bottom = 0 } = air;
    this.#edges.set([x, y, x + width, y + height], 8 * at);
    this.#edges.set([x - left, y - top, x + width + right, y + height + bottom], 8 * at + 4);
  }

  put(piece: number, { x, y, turn }: Spot): void {
    const { size, air } = this.#bodies[piece]!;
    const { width, height } = turnedSize(size!, turn);
    this.#turn[piece] = turn;
    this.#setEdges(piece, { x, y, width, height }, turnedAir(air, turn));
  }

  spotOf(piece: number): Spot {
    return { x: this.#edges[8 * piece]!, y: this.#edges[8 * piece + 1]!, turn: this.#turn[piece]! };
  }

  arranged(): readonly ArrangedBody[] {
    return this.#bodies.map((body, piece) => {
      const { x, y, turn } = this.spotOf(piece);
      return {
        body: body.index,
        outline: { x, y, ...turnedSize(body.size!, turn) },
        turnedDeg: turn,
      };
    });
  }

  /** mm² of copper times mm of length, of all conductors that it has; or of those at one or two pieces. */
  copper(piece?: number, second?: number): number {
    let sum = 0;
    if (piece === undefined) for (const link of this.#links) sum += this.#copperOf(link);
    else {
      for (const link of this.#linksOf[piece]!) sum += this.#copperOf(link);
      if (second !== undefined && second !== piece)
        for (const link of this.#linksOf[second]!)
          if (link.one !== piece && link.other !== piece) sum += this.#copperOf(link);
    }
    return sum;
  }

  #copperOf({ one, other, x, y, copperMm2 }: Link): number {
    const edges = this.#edges;
    const [from, to] = [8 * one, 8 * other];
    const toX = other < 0 ? x : (edges[to]! + edges[to + 2]!) / 2;
    const toY = other < 0 ? y : (edges[to + 1]! + edges[to + 3]!) / 2;
    const acrossMm = Math.abs((edges[from]! + edges[from + 2]!) / 2 - toX);
    const downMm = Math.abs((edges[from + 1]! + edges[from + 3]!) / 2 - toY);
    return copperMm2 * (acrossMm + downMm);
  }

  /** How far one or two pieces are from sound places: 1 for each pair that is too near, plus the area that they share, mm². */
  conflictsAt(piece: number, second = piece): number {
    const own = this.#conflictsOf(piece);
    return second === piece ? own : own + this.#conflictsOf(second) - this.#shared(piece, second);
  }

  conflicts(): number {
    let twice = 0;
    let once = 0;
    for (let piece = 0; piece < this.count; piece++) {
      once += this.#outside(piece);
      for (let other = 0; other < this.#all; other++) {
        if (other === piece) continue;
        if (other < this.count) twice += this.#shared(piece, other);
        else once += this.#shared(piece, other);
      }
    }
    return once + twice / 2;
  }

  #conflictsOf(piece: number): number {
    let sum = this.#outside(piece);
    for (let other = 0; other < this.#all; other++) if (other !== piece) sum += this.#shared(piece, other);
    return sum;
  }

  #outside(piece: number): number {
    const at = 8 * piece;
    const [left, top, right, bottom] = [
      this.#edges[at]!,
      this.#edges[at + 1]!,
      this.#edges[at + 2]!,
      this.#edges[at + 3]!,
    ];
    const isWithin =
      left >= -sameMm && top >= -sameMm && right <= this.#width + sameMm && bottom <= this.#height + sameMm;
    return isWithin ? 0 : 1 + (right - left) * (bottom - top);
  }

  /** The area in which one is in the other, or in the air that one of them needs, mm², plus 1; 0 if they are apart. */
  #shared(one: number, other: number): number {
    return Math.max(this.#common(8 * one + 4, 8 * other), this.#common(8 * one, 8 * other + 4));
  }

  #common(one: number, other: number): number {
    const edges = this.#edges;
    const width = Math.min(edges[one + 2]!, edges[other + 2]!) - Math.max(edges[one]!, edges[other]!);
    if (width <= sameMm) return 0;
    const height =
      Math.min(edges[one + 3]!, edges[other + 3]!) - Math.max(edges[one + 1]!, edges[other + 1]!);
    return height <= sameMm ? 0 : 1 + width * height;
  }

  /** A random place within the surface, on the grid. */
  anywhere(piece: number, turn: Turn, random: () => number): Spot {
    const { width, height } = turnedSize(this.#bodies[piece]!.size!, turn);
    const within = (roomMm: number) => {
      const last = Math.max(0, Math.floor((roomMm + sameMm) / this.grid));
      return Math.floor(random() * (last + 1)) * this.grid;
    };
    return { x: within(this.#width - width), y: within(this.#height - height), turn };
  }

  /** The nearest distance that a place may have, not less or not more than this. */
  #above(mm: number): number {
    return Math.ceil(mm / this.#fine - sameMm) * this.#fine;
  }

  #below(mm: number): number {
    return Math.floor(mm / this.#fine + sameMm) * this.#fine;
  }

  /** A place that touches another piece, an obstacle, or the air between them, on a random side, with their tops or left edges level. */
  beside(piece: number, random: () => number): Spot {
    const other = Math.floor(random() * this.#all);
    const { turn } = this.spotOf(piece);
    if (other === piece) return this.anywhere(piece, turn, random);
    const [own, of] = [this.#edges.subarray(8 * piece), this.#edges.subarray(8 * other)];
    const [width, height] = [own[2]! - own[0]!, own[3]! - own[1]!];
    const [level, upright] = [Math.max(0, this.#above(of[1]!)), Math.max(0, this.#above(of[0]!))];
    switch (sides[Math.floor(random() * 4)]!) {
      case "right":
        return { x: this.#above(of[2]! + Math.max(of[6]! - of[2]!, own[0]! - own[4]!)), y: level, turn };
      case "left": {
        const x = this.#below(of[0]! - Math.max(of[0]! - of[4]!, own[6]! - own[2]!) - width);
        return { x: Math.max(0, x), y: level, turn };
      }
      case "bottom":
        return { x: upright, y: this.#above(of[3]! + Math.max(of[7]! - of[3]!, own[1]! - own[5]!)), turn };
      case "top": {
        const y = this.#below(of[1]! - Math.max(of[1]! - of[5]!, own[7]! - own[3]!) - height);
        return { x: upright, y: Math.max(0, y), turn };
      }
    }
  }

  /** A turn that it may have, by chance. */
  turnOf(piece: number, random: () => number): Turn {
    const turns = this.#turns[piece]!;
    return turns[Math.floor(random() * turns.length)]!;
  }

  /** Nearly level or upright neighbours are put on one line, where that stays sound. */
  align(): void {
    for (let piece = 0; piece < this.count; piece++) {
      for (let other = 0; other < this.count; other++) {
        for (const axis of ["x", "y"] as const) {
          const [own, line] = [this.spotOf(piece), this.spotOf(other)];
          const awayMm = Math.abs(own[axis] - line[axis]);
          if (awayMm === 0 || awayMm > alignMm) continue;
          this.put(piece, { ...own, [axis]: line[axis] });
          if (this.conflictsAt(piece) > 0) this.put(piece, own);
        }
      }
    }
  }
}

interface Spot {
  readonly x: number;
  readonly y: number;
  readonly turn: Turn;
}

/** Leaves the board in the best sound state that it met; false if it met none. */
function* anneal(
  board: Board,
  random: () => number,
  progress: SearchProgress,
): Generator<SearchProgress, boolean> {
  const { count } = board;
  const pieces = Array.from({ length: count }, (_, piece) => piece);
  for (const piece of pieces) board.put(piece, board.anywhere(piece, board.turnOf(piece, random), random));
  let copper = board.copper();
  let conflicts = board.conflicts();
  const areaMm2 = board.arranged().reduce((sum, { outline }) => sum + outline.width * outline.height, 0);
  // An overlap of a hundredth of all parts costs at first as much as the conductors, and in the end a hundred times that.
  const unit = (100 * Math.max(1, copper)) / Math.max(1, areaMm2);
  const hottest = Math.max(1, copper) / 2;
  let best: readonly Spot[] | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (let step = 0; step < steps; step++) {
    if (step % stepsAtOnce === 0) yield progress;
    const done = step / steps;
    const weight = unit * (1 + 99 * done);
    const heat = hottest * (1 - done) ** 3 + 1e-9;
    const piece = Math.floor(random() * count);
    const kind = random();
    const second = kind < 0.15 ? Math.floor(random() * count) : piece;
    const [own, others] = [board.spotOf(piece), board.spotOf(second)];
    const conflictsBefore = board.conflictsAt(piece, second);
    const copperBefore = board.copper(piece, second);
    if (second !== piece) {
      board.put(second, { ...others, x: own.x, y: own.y });
      board.put(piece, { ...own, x: others.x, y: others.y });
    } else board.put(piece, moved(board, piece, { kind, done, random }));
    const moreConflicts = board.conflictsAt(piece, second) - conflictsBefore;
    const moreCopper = board.copper(piece, second) - copperBefore;
    const gain = -(moreCopper + weight * moreConflicts);
    if (gain < 0 && random() >= Math.exp(gain / heat)) {
      board.put(second, others);
      board.put(piece, own);
      continue;
    }
    conflicts += moreConflicts;
    copper += moreCopper;
    // Each conflict counts 1 or more: what is below is the rounding of the sums.
    if (conflicts < 0.5 && copper < least) [best, least] = [pieces.map((each) => board.spotOf(each)), copper];
  }
  if (!best) return false;
  for (const piece of pieces) board.put(piece, best[piece]!);
  return board.conflicts() === 0;
}

/** Elsewhere, turned, beside something, or a few steps of the grid away: fewer, the further the search is. */
function moved(
  board: Board,
  piece: number,
  { kind, done, random }: { readonly kind: number; readonly done: number; readonly random: () => number },
): Spot {
  const spot = board.spotOf(piece);
  if (kind < 0.25) return board.anywhere(piece, spot.turn, random);
  if (kind < 0.35) return { ...spot, turn: board.turnOf(piece, random) };
  if (kind < 0.5) return board.beside(piece, random);
  const reach = Math.max(1, Math.round((1 - done) * 20));
  const by = () => (Math.floor(random() * (2 * reach + 1)) - reach) * board.grid;
  return { ...spot, x: Math.max(0, spot.x + by()), y: Math.max(0, spot.y + by()) };
}

/** Numbers from 0 to below 1 that follow from a seed (mulberry32, public domain, from memory). */
function seeded(seed: number): () => number {
  let state = seed * 0x9e3779b9;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

function obstaclesOn(layout: Layout, index: number): readonly Obstacle[] {
  const { keepFree, outOfReach, fixtures } = layout.surfaces[index]!;
  return [
    ...[...keepFree, ...outOfReach].map((outline) => ({ outline, air: {} })),
    ...fixtures.map(({ distanceMm = 0, ...outline }) => ({
      outline,
      air: { left: distanceMm, right: distanceMm, top: distanceMm, bottom: distanceMm },
    })),
    ...layout.channels.flatMap((channel) => legsOn(channel, index)),
    ...layout.bodies.flatMap(({ place, air, size }) =>
      size && isOn(place, index) ? [{ outline: place.outline, air }] : [],
    ),
  ];
}

/** The stretches of a channel on a surface, as wide as its inside; as 1 mm if that is not stated. */
function legsOn({ course, inside }: Channel, surface: number): readonly Obstacle[] {
  if (course.kind !== "along" || course.surface !== surface) return [];
  const across = inside?.shape === "round" ? inside.diameter : (inside?.width ?? 1);
  return course.path.slice(1).map((to, at) => {
    const from = course.path[at]!;
    const [level, upright] = [Math.abs(to.x - from.x), Math.abs(to.y - from.y)];
    // No wider than the channel at its ends, where parts may touch it.
    const [besideX, besideY] = [level === 0 || upright > 0 ? across / 2 : 0, level > 0 ? across / 2 : 0];
    const [x, y] = [Math.min(from.x, to.x) - besideX, Math.min(from.y, to.y) - besideY];
    return { outline: { x, y, width: level + 2 * besideX, height: upright + 2 * besideY }, air: {} };
  });
}

function linksOf(
  layout: Layout,
  surface: number,
  bodies: readonly number[],
  copperMm2: readonly number[],
): readonly Link[] {
  return layout.leads.flatMap(({ index, from, to }): Link[] => {
    const ends = { one: bodies.indexOf(from.body), other: bodies.indexOf(to.body) };
    const weight = copperMm2[index] ?? 0;
    if (weight === 0 || (ends.one < 0 && ends.other < 0)) return [];
    if (ends.one >= 0 && ends.other >= 0) return [{ ...ends, x: 0, y: 0, copperMm2: weight }];
    const { place } = layout.bodies[ends.one < 0 ? from.body : to.body]!;
    if (!isOn(place, surface)) return [];
    return [
      { one: Math.max(ends.one, ends.other), other: -1, ...middleOf(place.outline), copperMm2: weight },
    ];
  });
}

function turnedSize(
  { width, height }: NonNullable<Body["size"]>,
  turn: Turn,
): Pick<Rectangle, "width" | "height"> {
  return turn === 90 || turn === 270 ? { width: height, height: width } : { width, height };
}

/** The air of a part without a place, at least {@link apartMm}, once it is turned clockwise. */
function turnedAir(air: Body["air"], turn: Turn): Body["air"] {
  const entries = sides.map(
    (side, at) => [sides[(at + turn / 90) % 4]!, Math.max(apartMm, air[side] ?? 0)] as const,
  );
  return Object.fromEntries(entries);
}

function isOn(place: BodyPlace | undefined, surface: number): place is BodyPlace & { kind: "on surface" } {
  return place?.kind === "on surface" && place.surface === surface;
}
