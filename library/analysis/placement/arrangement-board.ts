import { metresPerInch } from "../../model/length-limits.ts";
import type { Body, BodyPlace, Layout, Point, Rectangle, Side } from "../../model/placement/layout.ts";
import { middleOf } from "../../model/placement/middle-of.ts";
import { positionOf, turnedAir, turnedLeaving, turnedPoint } from "../../model/placement/turned.ts";
import { demandsBetween } from "./between-bodies.ts";
import type { BoardFacts } from "./bodies.ts";
import { channelLegs } from "./channel-legs.ts";
import { bendingEnds } from "./lug-room.ts";
import { distanceFrom, staysDry } from "./on-surface.ts";

/** Parts without a place that are to be put on one surface. */
export interface ArrangementTask {
  readonly facts: BoardFacts;
  /** Index of the surface. */
  readonly surface: number;
  /** Indices of the bodies: each with a size, without a place, and with a turn in {@link turnsOn}. */
  readonly bodies: readonly number[];
  /** By lead index: the cross-section of its copper, mm²; 0 if it is not known. */
  readonly copperMm2: readonly number[];
}

export interface ArrangedBody {
  /** Index of the body. */
  readonly body: number;
  /** Its outline as it is turned, mm from the top left corner of the surface. */
  readonly outline: Rectangle;
  readonly turnedDeg: Turn;
}

export type Turn = 0 | 90 | 180 | 270;

const quarterTurns = [0, 90, 180, 270] as const satisfies readonly Turn[];

/** The outline of a part as it is turned, and the air around it. */
interface TurnedShape extends Pick<Rectangle, "width" | "height"> {
  readonly air: Body["air"];
}

/** The turns in which a part may be mounted on a surface: as it states, else as it is drawn, or lying on any side of a floor. */
export function turnsOn(
  { mountingPositions, word }: Pick<Body, "mountingPositions" | "word">,
  surface: Parameters<typeof positionOf>[0],
): readonly Turn[] {
  const turns: readonly Turn[] =
    surface.orientation !== "vertical" ? [0, 90] : mountingPositions ? quarterTurns : [0];
  return turns.filter((turn) => mountingPositions?.includes(positionOf(surface, turn, word)) ?? true);
}

const eighthInchMm = (1_000 * metresPerInch) / 8;
/** By the unit in which the plan writes the surface: places are multiples of the first, mm; random places and steps of the second. */
const gridsMm = { mm: [1, 10], in: [eighthInchMm, 4 * eighthInchMm] } as const;
/** Parts within this of one line are aligned, mm. */
const alignMm = 30;
/** Distance that a part keeps where less air is stated, mm: room for a hand and a conductor; common practice, no source. */
const apartMm = 10;
/** Overlaps that are less deep are none, mm: of lengths in inches, the last binary digits are rounded. */
const sameMm = 1e-6;
/** The width for which the room before a terminal counts, mm: enough to count beside the areas of parts. */
const lugMm = 20;
/** Of the order of two things on a wall. */
const [notAbove, notBelow] = [1, 2];

const sides = ["top", "right", "bottom", "left"] as const satisfies readonly Side[];

interface Obstacle {
  readonly outline: Rectangle;
  readonly air: Body["air"];
  /** A part that has its place. */
  readonly body?: Body;
  /** No lug can bend into it. */
  readonly stopsLugs?: boolean;
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
export class Board {
  readonly count: number;
  /** mm */
  readonly grid: number;
  readonly #fine: number;
  readonly #width: number;
  readonly #height: number;
  readonly #bodies: readonly Body[];
  readonly #turns: readonly (readonly Turn[])[];
  readonly #turn: Turn[];
  /** By piece, and then by its quarter turns. */
  readonly #shapes: readonly (readonly TurnedShape[])[];
  readonly #links: readonly Link[];
  readonly #linksOf: readonly (readonly Link[])[];
  readonly #isWall: boolean;
  /** The lowest bottom edge of each piece: above water that may stand there. */
  readonly #bottoms: readonly number[];
  /** By piece, and then by each thing: the least distance between them, mm, and whether one of them may not be above the other. */
  readonly #leastMm: Float64Array;
  readonly #order: Uint8Array;
  /** The room that lugs need ahead of the terminals of each thing, from its top left corner, by its turn. */
  readonly #lugs: readonly (readonly (readonly Rectangle[])[])[];
  readonly #stopsLugs: readonly boolean[];
  /** Left, top, right and bottom edge of each, and then the same with its air. */
  readonly #edges: Float64Array;

  constructor({ facts, surface: index, bodies, copperMm2 }: ArrangementTask) {
    const { layout } = facts;
    const surface = layout.surfaces[index]!;
    [this.#fine, this.grid] = gridsMm[surface.writtenIn];
    this.count = bodies.length;
    this.#width = surface.width;
    this.#height = surface.height;
    this.#bodies = bodies.map((body) => layout.bodies[body]!);
    this.#turns = this.#bodies.map((body) => turnsOn(body, surface));
    this.#turn = this.#turns.map(([first]) => first!);
    this.#shapes = this.#bodies.map(({ size, air }) =>
      quarterTurns.map((turn) => ({ ...turnedSize(size!, turn), air: airAround(air, turn) })),
    );
    const obstacles = obstaclesOn(facts, index);
    this.#edges = new Float64Array(8 * (bodies.length + obstacles.length));
    obstacles.forEach(({ outline, air }, at) => {
      this.#setEdges(bodies.length + at, outline, air);
    });
    this.#isWall = surface.orientation === "vertical";
    const { bilgeWaterMm = 0 } = surface;
    this.#bottoms = this.#bodies.map((body) =>
      this.#isWall && staysDry(facts, body) ? surface.height - bilgeWaterMm : surface.height,
    );
    const things = [...this.#bodies, ...obstacles.map(({ body }) => body)];
    this.#leastMm = new Float64Array(this.count * things.length);
    this.#order = new Uint8Array(this.count * things.length);
    this.#bodies.forEach((body, piece) => {
      things.forEach((other, at) => {
        if (!other || other === body) return;
        const [own, its] = [demandsBetween(facts, body, other), demandsBetween(facts, other, body)];
        this.#leastMm[piece * things.length + at] = Math.max(own.leastMm, its.leastMm);
        this.#order[piece * things.length + at] =
          (own.notAbove ? notAbove : 0) + (its.notAbove ? notBelow : 0);
      });
    });
    this.#lugs = things.map((body) => (body ? lugsOf(facts, body) : []));
    this.#stopsLugs = [...bodies.map(() => true), ...obstacles.map(({ stopsLugs = false }) => stopsLugs)];
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
    const edges = this.#edges;
    const first = 8 * at;
    edges[first] = x;
    edges[first + 1] = y;
    edges[first + 2] = x + width;
    edges[first + 3] = y + height;
    edges[first + 4] = x - left;
    edges[first + 5] = y - top;
    edges[first + 6] = x + width + right;
    edges[first + 7] = y + height + bottom;
  }

  put(piece: number, { x, y, turn }: Spot): void {
    const { width, height, air } = this.#shapes[piece]![turn / 90]!;
    this.#turn[piece] = turn;
    this.#setEdges(piece, { x, y, width, height }, air);
  }

  spotOf(piece: number): Spot {
    return { x: this.#edges[8 * piece]!, y: this.#edges[8 * piece + 1]!, turn: this.#turn[piece]! };
  }

  putAll(spots: readonly Spot[]): void {
    for (const [piece, spot] of spots.entries()) this.put(piece, spot);
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
      left >= -sameMm &&
      top >= -sameMm &&
      right <= this.#width + sameMm &&
      bottom <= this.#bottoms[piece]! + sameMm;
    let beyond = isWithin ? 0 : 1 + (right - left) * (bottom - top);
    for (const { x, y, width, height } of this.#lugsAt(piece)) {
      const [toRight, toBottom] = [left + x + width - this.#width, top + y + height - this.#height];
      const byMm = Math.max(-left - x, -top - y, toRight, toBottom);
      if (byMm > sameMm) beyond += 1 + lugMm * byMm;
    }
    return beyond;
  }

  /** The room that its lugs need, as it is turned, from its top left corner. */
  #lugsAt(thing: number): readonly Rectangle[] {
    return this.#lugs[thing]![thing < this.count ? this.#turn[thing]! / 90 : 0] ?? [];
  }

  /**
   * Of a piece and another thing: the area in which one is in the other, or in the air or the room that one of them needs, mm², plus 1
   * each; 0 if they are apart.
   */
  #shared(piece: number, other: number): number {
    const outlines = Math.max(this.#common(8 * piece + 4, 8 * other), this.#common(8 * piece, 8 * other + 4));
    return (
      outlines +
      this.#demanded(piece, other) +
      this.#beforeLugs(piece, other) +
      this.#beforeLugs(other, piece)
    );
  }

  #demanded(piece: number, other: number): number {
    const at = piece * this.#all + other;
    const [leastMm, order] = [this.#leastMm[at]!, this.#order[at]!];
    if (leastMm === 0 && order === 0) return 0;
    const edges = this.#edges;
    const [one, two] = [8 * piece, 8 * other];
    const across = Math.min(edges[one + 2]!, edges[two + 2]!) - Math.max(edges[one]!, edges[two]!);
    const down = Math.min(edges[one + 3]!, edges[two + 3]!) - Math.max(edges[one + 1]!, edges[two + 1]!);
    let sum = 0;
    const lacksMm = leastMm - Math.hypot(Math.max(0, -across), Math.max(0, -down));
    if (lacksMm > sameMm) sum += 1 + lacksMm * lugMm;
    if (order > 0 && this.#isWall && across > sameMm) {
      const lowerMm = edges[two + 1]! - edges[one + 1]!;
      const isWrong = lowerMm > 0 ? order & notAbove : lowerMm < 0 && order & notBelow;
      if (isWrong) sum += 1 + across * lugMm;
    }
    return sum;
  }

  #beforeLugs(of: number, other: number): number {
    const rooms = this.#lugsAt(of);
    if (rooms.length === 0 || !this.#stopsLugs[other]) return 0;
    const edges = this.#edges;
    const [left, top, at] = [edges[8 * of]!, edges[8 * of + 1]!, 8 * other];
    let sum = 0;
    for (const { x, y, width, height } of rooms) {
      const across = commonOf(left + x, width, edges[at]!, edges[at + 2]!);
      if (across <= sameMm) continue;
      const down = commonOf(top + y, height, edges[at + 1]!, edges[at + 3]!);
      if (down > sameMm) sum += 1 + across * down * lugMm;
    }
    return sum;
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
    const { width, height } = this.#shapes[piece]![turn / 90]!;
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

/** How much of a stretch is between two edges, mm; of a stretch without a length, 1 inside of them and 0 elsewhere. */
function commonOf(from: number, lengthMm: number, start: number, end: number): number {
  if (lengthMm === 0) return from > start + sameMm && from < end - sameMm ? 1 : 0;
  return Math.min(from + lengthMm, end) - Math.max(from, start);
}

export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly turn: Turn;
}

function obstaclesOn(facts: BoardFacts, index: number): readonly Obstacle[] {
  const { layout } = facts;
  const { keepFree, outOfReach, fixtures } = layout.surfaces[index]!;
  const [anyBody] = layout.bodies;
  return [
    ...keepFree.map((outline) => ({ outline, air: {}, stopsLugs: true })),
    ...outOfReach.map((outline) => ({ outline, air: {} })),
    ...fixtures.map((fixture) => {
      const distanceMm = anyBody ? distanceFrom(facts, anyBody, fixture) : 0;
      const air = { left: distanceMm, right: distanceMm, top: distanceMm, bottom: distanceMm };
      return { outline: fixture, air };
    }),
    ...layout.channels.flatMap((channel) =>
      channelLegs(channel, index).map((outline) => ({ outline, air: {} })),
    ),
    ...layout.bodies.flatMap((body) => {
      const { place, air, size } = body;
      return size && isOn(place, index) ? [{ outline: place.outline, air, body, stopsLugs: true }] : [];
    }),
  ];
}

/**
 * By a quarter turn each, the room that the conductors of a part need to bend, as lines straight ahead of its terminals, from
 * its top left corner. A part with a place has those of its own turn alone.
 */
function lugsOf(facts: BoardFacts, body: Body): readonly (readonly Rectangle[])[] {
  const { place } = body;
  const [corner, size] =
    place?.kind === "on surface" ? [place.outline, place.outline] : [{ x: 0, y: 0 }, body.size!];
  const rooms = bendingEnds(facts).flatMap(({ end, spot, needed }) =>
    end.body === body.index && needed && spot?.leaves ? [{ spot, leaves: spot.leaves, mm: needed.mm }] : [],
  );
  const turns: readonly Turn[] = place ? [0] : quarterTurns;
  return turns.map((turn) =>
    rooms.flatMap(({ spot, leaves, mm }) =>
      aheadOf(
        turnedPoint({ x: spot.x - corner.x, y: spot.y - corner.y }, size, turn),
        turnedLeaving(leaves, turn),
        mm,
      ),
    ),
  );
}

function aheadOf(
  { x, y }: Point,
  leaves: ReturnType<typeof turnedLeaving>,
  mm: number,
): readonly Rectangle[] {
  switch (leaves) {
    case "left":
      return [{ x: x - mm, y, width: mm, height: 0 }];
    case "right":
      return [{ x, y, width: mm, height: 0 }];
    case "up":
      return [{ x, y: y - mm, width: 0, height: mm }];
    case "down":
      return [{ x, y, width: 0, height: mm }];
    case "front":
      return [];
  }
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

/** The air of a part without a place, at least {@link apartMm}. */
function airAround(air: Body["air"], turn: Turn): Body["air"] {
  const atLeast = sides.map((side) => [side, Math.max(apartMm, air[side] ?? 0)] as const);
  return turnedAir(Object.fromEntries(atLeast), turn);
}

function isOn(place: BodyPlace | undefined, surface: number): place is BodyPlace & { kind: "on surface" } {
  return place?.kind === "on surface" && place.surface === surface;
}
