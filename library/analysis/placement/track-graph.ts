import type {
  Body,
  Channel,
  Layout,
  Lead,
  Point,
  Rectangle,
  TerminalSpot,
} from "../../model/placement/layout.ts";
import { middleOf } from "../../model/placement/middle-of.ts";
import { openStretch } from "./open-stretch.ts";
import { lengthOfPath } from "./rectangles.ts";

/**
 * The ways that conductors may take: channels, and open stretches along surfaces between channels and terminals. A conductor in the open
 * is supported at least every 450 mm (ISO 10133:2012, 7.3), so a stretch of up to that length is open to every conductor; a longer one only if no
 * other way exists, except the nearest channel of a terminal that has none within that length.
 */
export const usualOpenMm = 450;

export interface TrackGraph {
  readonly nodes: number;
  readonly edges: readonly TrackEdge[];
  /** By lead index: the nodes of its two ends; undefined if a part is not placed. */
  readonly ends: readonly (readonly [LeadNode, LeadNode] | undefined)[];
  /** Nodes of terminals: a way may begin and end there, and not pass through. */
  readonly terminals: ReadonlySet<number>;
}

export interface LeadNode {
  readonly node: number;
  /** Where it is, if that is on a surface. */
  readonly at?: Anchor;
}

export interface TrackEdge {
  readonly from: number;
  readonly to: number;
  readonly lengthMm: number;
  /** Index of the channel; absent for an open stretch. */
  readonly channel?: number;
  /** Its ends along that channel, from the beginning of the channel, mm: at `from` and at `to`. */
  readonly alongMm?: readonly [number, number];
  /** Index of the surface that it is on; absent for a channel between surfaces, and beyond a free end. */
  readonly surface?: number;
  /** From `from` to `to`, on that surface. */
  readonly path?: readonly Point[];
}

/** A place from which conductors leave into the open: a terminal, or an end of a channel. */
export interface Anchor {
  readonly node: number;
  readonly surface: number;
  readonly point: Point;
  /** Index of the body that it belongs to; absent for the end of a channel. */
  readonly body?: number;
  /** The channel whose end it is. */
  readonly channel?: number;
  /** The way out of its part, towards the side that its terminal states. */
  readonly out: readonly Point[];
}

/** `isComplete`: every open stretch; otherwise only the usual ones. */
export function trackGraph(layout: Layout, isComplete: boolean): TrackGraph {
  const building = new GraphBuilder(layout, isComplete);
  return building.build();
}

/** A place on a channel: a point of its path with the distance from its beginning, or an end. */
interface Foot {
  readonly channel: number;
  readonly point: Point;
  /** Along the channel from its beginning, mm. */
  readonly alongMm: number;
}

/** A foot with the open stretch that leads there. */
interface Reached extends Foot {
  readonly path: readonly Point[];
  readonly lengthMm: number;
}

class GraphBuilder {
  readonly #layout: Layout;
  readonly #isComplete: boolean;
  #nodes = 0;
  readonly #edges: TrackEdge[] = [];
  readonly #terminals = new Set<number>();
  /** By channel: its nodes, with their distances from its beginning. */
  readonly #onChannel: { readonly node: number; readonly alongMm: number; readonly point?: Point }[][];
  /** By channel: the first of its nodes at a distance from its beginning, mm. */
  readonly #nodeAt: readonly Map<number, number>[];
  readonly #obstacles: readonly (readonly Obstacle[])[];
  /** By surface: the channels on it, and those with an end on it, in their order. */
  readonly #channelsOn: readonly (readonly number[])[];

  constructor(layout: Layout, isComplete: boolean) {
    this.#layout = layout;
    this.#isComplete = isComplete;
    this.#onChannel = layout.channels.map(() => []);
    this.#nodeAt = layout.channels.map(() => new Map());
    this.#obstacles = layout.surfaces.map((_, surface) => obstaclesOn(layout, surface));
    this.#channelsOn = channelsBySurface(layout);
  }

  build(): TrackGraph {
    const { channels, leads } = this.#layout;
    const ends = channels.flatMap((channel, index) => this.#endsOf(channel, index));
    channels.forEach(({ course }, one) => {
      if (course.kind !== "along") return;
      for (const other of this.#channelsOn[course.surface]!) if (other > one) this.#joinCrossing(one, other);
    });
    for (const end of ends) this.#connect(end);
    const anchors = new Map<string, LeadNode>();
    const nodeOf = (end: Lead["from"]) => {
      const body = this.#layout.bodies[end.body]!;
      const spot = spotOf(body, end);
      const key = `${end.body} ${spot?.x} ${spot?.y} ${spot?.leaves}`;
      const known = anchors.get(key) ?? this.#terminalNode(body, spot);
      if (known) anchors.set(key, known);
      return known;
    };
    const placed = leads.map(({ from, to }) => {
      const [start, end] = [nodeOf(from), nodeOf(to)];
      return start && end && ([start, end] as const);
    });
    this.#joinAlongChannels();
    return { nodes: this.#nodes, edges: this.#edges, ends: placed, terminals: this.#terminals };
  }

  /** The ends of a channel are nodes; those on a surface connect with other channels there. */
  #endsOf({ course }: Channel, channel: number): readonly Anchor[] {
    const end = (
      alongMm: number,
      at: (Point & { readonly surface: number }) | undefined,
    ): readonly Anchor[] => {
      const point = at && { x: at.x, y: at.y };
      const node = this.#newNodeOn(channel, alongMm, point);
      return at && point ? [{ node, surface: at.surface, point, channel, out: [point] }] : [];
    };
    if (course.kind === "between") return [...end(0, course.from), ...end(course.lengthMm, course.to)];
    const { path, surface } = course;
    return [
      ...end(0, { ...path[0]!, surface }),
      ...end(lengthOfPath(path), { ...path[path.length - 1]!, surface }),
    ];
  }

  #joinCrossing(one: number, other: number): void {
    const { channels } = this.#layout;
    const [first, second] = [channels[one]!.course, channels[other]!.course];
    if (first.kind !== "along" || second.kind !== "along" || first.surface !== second.surface) return;
    let before = 0;
    for (let at = 1; at < first.path.length; at++) {
      const [start, end] = [first.path[at - 1]!, first.path[at]!];
      let beforeOther = 0;
      for (let to = 1; to < second.path.length; to++) {
        const [from, until] = [second.path[to - 1]!, second.path[to]!];
        const point = crossingOf([start, end], [from, until]);
        if (point) {
          const onFirst = this.#nodeOn(one, before + lengthOfPath([start, point]), point);
          const onSecond = this.#nodeOn(other, beforeOther + lengthOfPath([from, point]), point);
          this.#edges.push({
            from: onFirst,
            to: onSecond,
            lengthMm: 0,
            surface: first.surface,
            path: [point],
          });
        }
        beforeOther += lengthOfPath([from, until]);
      }
      before += lengthOfPath([start, end]);
    }
  }

  /** A terminal on a surface, or the conductors beyond the free end of a channel. */
  #terminalNode(body: Body, spot: TerminalSpot | undefined): LeadNode | undefined {
    const { place } = body;
    if (!place) return undefined;
    const node = this.#nodes++;
    this.#terminals.add(node);
    if (place.kind === "at end") {
      const all = this.#onChannel[place.channel]!;
      // The second of the two nodes that every channel has from the beginning.
      const [, end] = all;
      this.#edges.push({ from: end!.node, to: node, lengthMm: place.beyondMm });
      return { node };
    }
    const { outline, surface } = place;
    const point = spot ?? middleOf(outline);
    const exit = spot ? exitOf(spot, outline) : undefined;
    const at = { x: point.x, y: point.y };
    const anchor: Anchor = {
      body: body.index,
      ...{ node, surface },
      point: exit ?? at,
      out: exit ? [at, exit] : [at],
    };
    this.#connect(anchor);
    return { node, at: anchor };
  }

  /** Open stretches from an anchor to the channels of its surface. */
  #connect(anchor: Anchor): void {
    const { surfaces } = this.#layout;
    const feet = this.#feetOf(anchor);
    const obstacles = obstaclesFor([anchor], this.#obstacles[anchor.surface]!);
    const reached = ({ foot }: (typeof feet)[number], mostMm: number): Reached | undefined => {
      const path = openStretch(anchor.point, foot.point, obstacles, surfaces[anchor.surface]!, mostMm);
      if (!path) return undefined;
      const whole = [...anchor.out.slice(0, -1), ...path];
      return { path: whole, lengthMm: lengthOfPath(whole), ...foot };
    };
    const mostMm = this.#isComplete ? Number.POSITIVE_INFINITY : usualOpenMm;
    const inReach = feet
      .filter(({ least }) => least <= mostMm)
      .flatMap((foot) => reached(foot, mostMm) ?? []);
    let usable = inReach.filter(({ lengthMm }) => lengthMm <= mostMm);
    if (usable.length === 0 && !this.#isComplete) {
      let nearest: Reached | undefined;
      for (const foot of feet) {
        const lessMm = nearest?.lengthMm ?? Number.POSITIVE_INFINITY;
        if (foot.least >= lessMm) break;
        const found = reached(foot, lessMm);
        if (found && found.lengthMm < lessMm) nearest = found;
      }
      usable = nearest ? [nearest] : [];
    }
    for (const { channel, alongMm, point, path, lengthMm } of usable) {
      const to = this.#nodeOn(channel, alongMm, point);
      this.#edges.push({ from: anchor.node, to, lengthMm, surface: anchor.surface, path });
    }
  }

  /** The nearest place of each stretch of the other channels on its surface, with the least length of a way there, nearest first. */
  #feetOf({
    surface,
    point,
    channel: own,
    out,
    body,
  }: Anchor): readonly { readonly foot: Foot; readonly least: number }[] {
    // A conductor that goes around its own part reaches a channel beside the corners of that part.
    const outline = this.#obstacles[surface]!.find((obstacle) => obstacle.body === body);
    const corners = out.length > 1 ? cornersOf(outline) : [];
    const feet: { readonly foot: Foot; readonly least: number }[] = [];
    const add = (foot: Foot) => {
      const least = Math.abs(foot.point.x - point.x) + Math.abs(foot.point.y - point.y);
      feet.push({ foot, least });
    };
    for (const channel of this.#channelsOn[surface]!) {
      if (channel === own) continue;
      const { course } = this.#layout.channels[channel]!;
      if (course.kind === "between") {
        if (course.from.surface === surface) add({ channel, alongMm: 0, point: plain(course.from) });
        if (course.to?.surface === surface)
          add({ channel, alongMm: course.lengthMm, point: plain(course.to) });
        continue;
      }
      let before = 0;
      for (let at = 1; at < course.path.length; at++) {
        const [start, end] = [course.path[at - 1]!, course.path[at]!];
        const nearest = [point, ...corners].map((place) => nearestOn(start, end, place));
        for (const foot of eachOnce(nearest))
          add({ channel, alongMm: before + lengthOfPath([start, foot]), point: foot });
        before += lengthOfPath([start, end]);
      }
    }
    return feet.sort((one, other) => one.least - other.least || one.foot.channel - other.foot.channel);
  }

  #nodeOn(channel: number, alongMm: number, point: Point): number {
    return this.#nodeAt[channel]!.get(alongMm) ?? this.#newNodeOn(channel, alongMm, point);
  }

  #newNodeOn(channel: number, alongMm: number, point: Point | undefined): number {
    const node = this.#nodes++;
    this.#onChannel[channel]!.push({ node, alongMm, ...(point && { point }) });
    const nodeAt = this.#nodeAt[channel]!;
    if (!nodeAt.has(alongMm)) nodeAt.set(alongMm, node);
    return node;
  }

  #joinAlongChannels(): void {
    this.#layout.channels.forEach(({ course }, channel) => {
      const along = [...this.#onChannel[channel]!].sort(
        (one, other) => one.alongMm - other.alongMm || one.node - other.node,
      );
      for (let at = 1; at < along.length; at++) {
        const [from, to] = [along[at - 1]!, along[at]!];
        const lengthMm = to.alongMm - from.alongMm;
        this.#edges.push({
          alongMm: [from.alongMm, to.alongMm],
          ...{ from: from.node, to: to.node, lengthMm, channel },
          ...(course.kind === "along" && {
            surface: course.surface,
            path: partOfPath(course.path, from.alongMm, to.alongMm),
          }),
        });
      }
    });
  }
}

function channelsBySurface({ surfaces, channels }: Layout): readonly (readonly number[])[] {
  const bySurface = surfaces.map((): number[] => []);
  channels.forEach(({ course }, index) => {
    const on = course.kind === "along" ? [course.surface] : [course.from.surface, course.to?.surface];
    for (const surface of new Set(on)) if (surface !== undefined) bySurface[surface]!.push(index);
  });
  return bySurface;
}

/** The stated place of the stud or branch; of more conductors than places, they share the last one. */
function spotOf(body: Body, { terminal, stud }: Lead["from"]): TerminalSpot | undefined {
  const spots = body.terminals[terminal];
  return spots?.[Math.min(stud, spots.length - 1)];
}

/** Where a conductor leaves the outline of its part, towards the stated side; undefined if no side is stated. */
function exitOf({ x, y, leaves }: TerminalSpot, outline: Rectangle): Point | undefined {
  switch (leaves) {
    case "left":
      return { x: outline.x, y };
    case "right":
      return { x: outline.x + outline.width, y };
    case "up":
      return { x, y: outline.y };
    case "down":
      return { x, y: outline.y + outline.height };
    default:
      return undefined;
  }
}

/** A place kept free, or a part, with its index in {@link Layout.bodies}. */
interface Obstacle extends Rectangle {
  readonly body?: number;
}

/** Places kept free and parts, around which a conductor on a surface is laid. */
export function obstaclesOn({ surfaces, bodies }: Layout, surface: number): readonly Obstacle[] {
  return [
    ...surfaces[surface]!.keepFree,
    ...bodies.flatMap(({ place, size, index: body }) =>
      size && place?.kind === "on surface" && place.surface === surface ? [{ body, ...place.outline }] : [],
    ),
  ];
}

/** The parts in the way: not one that a conductor starts at, unless it leaves that one towards a stated side. */
export function obstaclesFor(anchors: readonly Anchor[], all: readonly Obstacle[]): readonly Rectangle[] {
  const own = new Set(anchors.flatMap(({ body, out }) => (out.length === 1 ? [body] : [])));
  return all.filter(({ body }) => body === undefined || !own.has(body));
}

function cornersOf(outline: Rectangle | undefined): readonly Point[] {
  if (!outline) return [];
  const { x, y, width, height } = outline;
  return [x, x + width].flatMap((across) => [y, y + height].map((down) => ({ x: across, y: down })));
}

function eachOnce(points: readonly Point[]): readonly Point[] {
  return points.filter(({ x, y }, at) => points.findIndex((one) => one.x === x && one.y === y) === at);
}

function plain({ x, y }: Point): Point {
  return { x, y };
}

function nearestOn(start: Point, end: Point, { x, y }: Point): Point {
  const [across, down] = [end.x - start.x, end.y - start.y];
  const squared = across * across + down * down;
  if (squared === 0) return start;
  const share = ((x - start.x) * across + (y - start.y) * down) / squared;
  if (share <= 0) return start;
  if (share >= 1) return end;
  return { x: start.x + share * across, y: start.y + share * down };
}

type Stretch = readonly [Point, Point];

/** Where two stretches cross or touch, inside of both or at an end; undefined if they are parallel. */
function crossingOf([one, two]: Stretch, [three, four]: Stretch): Point | undefined {
  const [ax, ay] = [two.x - one.x, two.y - one.y];
  const [bx, by] = [four.x - three.x, four.y - three.y];
  const cross = ax * by - ay * bx;
  if (cross === 0) return undefined;
  const [dx, dy] = [three.x - one.x, three.y - one.y];
  const share = (dx * by - dy * bx) / cross;
  const other = (dx * ay - dy * ax) / cross;
  if (share < 0 || share > 1 || other < 0 || other > 1) return undefined;
  return { x: one.x + share * ax, y: one.y + share * ay };
}

/** The points of a path between two distances from its beginning, both ends included. */
function partOfPath(path: readonly Point[], fromMm: number, untilMm: number): readonly Point[] {
  const part: Point[] = [];
  let before = 0;
  for (let at = 1; at < path.length; at++) {
    const [start, end] = [path[at - 1]!, path[at]!];
    const length = lengthOfPath([start, end]);
    const pointAt = (alongMm: number): Point => {
      const share = length === 0 ? 0 : (alongMm - before) / length;
      return { x: start.x + share * (end.x - start.x), y: start.y + share * (end.y - start.y) };
    };
    if (part.length === 0 && fromMm <= before + length) part.push(pointAt(fromMm));
    if (part.length > 0 && untilMm <= before + length) {
      part.push(pointAt(untilMm));
      return part;
    }
    if (part.length > 0) part.push(end);
    before += length;
  }
  return part;
}
