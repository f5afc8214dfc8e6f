import type { Layout, Lead, Point } from "../../model/placement/layout.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import { MinQueue } from "./min-queue.ts";
import { openStretch } from "./open-stretch.ts";
import { lengthOfPath } from "./rectangles.ts";
import {
  type LeadNode,
  obstaclesFor,
  obstaclesOn,
  type TrackEdge,
  type TrackGraph,
  trackGraph,
  usualOpenMm,
} from "./track-graph.ts";

/** The way of a conductor. */
export interface Way {
  readonly state: "found";
  /** From terminal to terminal, without slack, mm. */
  readonly lengthMm: number;
  /** In their order from its `from` end. */
  readonly stretches: readonly Stretch[];
}

export interface Stretch {
  readonly lengthMm: number;
  /** Index of the channel; absent in the open. */
  readonly channel?: number;
  /** Where it enters and leaves that channel, from the beginning of the channel, mm. */
  readonly alongMm?: readonly [number, number];
  /** Index of the surface; absent between surfaces. */
  readonly surface?: number;
  /** On that surface. */
  readonly path?: readonly Point[];
}

/** The reason why a conductor has no way. */
export type NoWay =
  /** Indices of the bodies without a place. */
  | { readonly state: "not placed"; readonly bodies: readonly number[] }
  /** Neither the channels nor the surfaces lead from one end to the other. */
  | { readonly state: "no way" };

/**
 * The shortest way of each conductor, by lead index. Every channel and every open stretch is tried before a conductor has no way.
 * Deterministic: of equal ways, the one whose nodes come first in the plan.
 */
export const waysOf = workedOutOnce((layout: Layout): readonly (Way | NoWay)[] => {
  const finder = new WayFinder(layout);
  const ways = layout.leads.map((lead) => finder.find(lead));
  const partners = new Map(layout.leads.map((lead) => [`${lead.record} ${lead.role}`, lead]));
  return layout.leads.map(({ index, record, role, paired }) => {
    const own = ways[index]!;
    const partner = paired && partners.get(`${record} ${role === "positive" ? "return" : "positive"}`);
    return partner ? together(own, ways[partner.index]!) : own;
  });
});

/** Both conductors of one cable take the longer of the two ways. */
function together(own: Way | NoWay, other: Way | NoWay): Way | NoWay {
  if (own.state !== "found" || other.state !== "found" || other.lengthMm <= own.lengthMm) return own;
  return { ...other, stretches: other.stretches.map(reversed).reverse() };
}

function reversed(stretch: Stretch): Stretch {
  const { path, alongMm } = stretch;
  return {
    ...stretch,
    ...(path && { path: [...path].reverse() }),
    ...(alongMm && { alongMm: [alongMm[1], alongMm[0]] }),
  };
}

class WayFinder {
  readonly #layout: Layout;
  #complete: Search | undefined;
  readonly #usual: Search;

  constructor(layout: Layout) {
    this.#layout = layout;
    this.#usual = new Search(trackGraph(layout, false));
  }

  find(lead: Lead): Way | NoWay {
    const { bodies } = this.#layout;
    const missing = [lead.from, lead.to].filter(({ body }) => !bodies[body]!.place);
    if (missing.length > 0) return { state: "not placed", bodies: missing.map(({ body }) => body) };
    if (lead.through) return this.#through(lead, lead.through);
    const usual = shorter(this.#usual.between(lead), this.#inTheOpen(lead, usualOpenMm));
    return (
      usual ?? shorter(this.#completeSearch().between(lead), this.#inTheOpen(lead)) ?? { state: "no way" }
    );
  }

  /**
   * Only along the channels that the plan names, with open stretches of any length only if no other way exists: they would lead past the
   * channels. Without channels, in the open.
   */
  #through(lead: Lead, channels: readonly number[]): Way | NoWay {
    const only = new Set(channels);
    const found =
      channels.length === 0
        ? this.#inTheOpen(lead)
        : (this.#usual.between(lead, only) ?? this.#completeSearch().between(lead, only));
    return found ?? { state: "no way" };
  }

  #completeSearch(): Search {
    this.#complete ??= new Search(trackGraph(this.#layout, true));
    return this.#complete;
  }

  /** Straight along the surface that both ends are on, around the parts between them. */
  #inTheOpen(lead: Lead, most = Number.POSITIVE_INFINITY): Way | undefined {
    const [from, to] = this.#usual.endsOf(lead)?.map(({ at }) => at) ?? [];
    if (!from || !to || from.surface !== to.surface) return undefined;
    const { surface } = from;
    const least = Math.abs(to.point.x - from.point.x) + Math.abs(to.point.y - from.point.y);
    if (least > most) return undefined;
    const obstacles = obstaclesFor([from, to], obstaclesOn(this.#layout, surface));
    const path = openStretch(from.point, to.point, obstacles, this.#layout.surfaces[surface]!, most);
    if (!path) return undefined;
    const whole = [...from.out.slice(0, -1), ...path, ...[...to.out].reverse().slice(1)];
    const lengthMm = lengthOfPath(whole);
    if (lengthMm > most) return undefined;
    return { state: "found", lengthMm, stretches: [{ lengthMm, surface, path: whole }] };
  }
}

function shorter(one: Way | undefined, other: Way | undefined): Way | undefined {
  if (!one || !other) return one ?? other;
  return other.lengthMm < one.lengthMm ? other : one;
}

/** Dijkstra's algorithm from one terminal at a time. */
class Search {
  readonly #graph: TrackGraph;
  readonly #edgesAt: readonly (readonly number[])[];
  readonly #found = new Map<number, readonly (Step | undefined)[]>();

  constructor(graph: TrackGraph) {
    this.#graph = graph;
    const at: number[][] = Array.from({ length: graph.nodes }, () => []);
    graph.edges.forEach(({ from, to }, edge) => {
      at[from]!.push(edge);
      at[to]!.push(edge);
    });
    this.#edgesAt = at;
  }

  endsOf({ index }: Lead): readonly [LeadNode, LeadNode] | undefined {
    return this.#graph.ends[index];
  }

  /** @param only The channels that it may take; left out: all. */
  between(lead: Lead, only?: ReadonlySet<number>): Way | undefined {
    const ends = this.endsOf(lead);
    if (!ends) return undefined;
    const [{ node: start }, { node: end }] = ends;
    const steps = only ? this.#search(start, only) : this.#searched(start);
    const edges: (readonly [TrackEdge, boolean])[] = [];
    for (let node = end; node !== start; ) {
      const step = steps[node];
      if (!step) return undefined;
      const edge = this.#graph.edges[step.edge]!;
      edges.unshift([edge, edge.to === node]);
      node = edge.to === node ? edge.from : edge.to;
    }
    return wayAlong(edges);
  }

  #searched(start: number): readonly (Step | undefined)[] {
    const known = this.#found.get(start) ?? this.#search(start);
    this.#found.set(start, known);
    return known;
  }

  #search(start: number, only?: ReadonlySet<number>): readonly (Step | undefined)[] {
    const { nodes, edges, terminals } = this.#graph;
    const steps: (Step | undefined)[] = new Array(nodes);
    const done = new Uint8Array(nodes);
    const distances = new Float64Array(nodes).fill(Number.POSITIVE_INFINITY);
    distances[start] = 0;
    const queue = new MinQueue();
    queue.push(0, start);
    for (let next = queue.pop(); next; next = queue.pop()) {
      const [distance, node] = next;
      if (done[node]) continue;
      done[node] = 1;
      if (node !== start && terminals.has(node)) continue;
      for (const index of this.#edgesAt[node]!) {
        const edge = edges[index]!;
        if (only && edge.channel !== undefined && !only.has(edge.channel)) continue;
        const there = edge.from === node ? edge.to : edge.from;
        const through = distance + edge.lengthMm * (edge.channel === undefined ? inTheOpenFactor : 1);
        if (!done[there] && through < distances[there]!) {
          distances[there] = through;
          steps[there] = { edge: index };
          queue.push(through, there);
        }
      }
    }
    return steps;
  }
}

/** Of ways of equal length, the one with more of it in channels: there a conductor is held and protected. */
const inTheOpenFactor = 1 + 1e-9;

/** The edge by which the shortest way reaches a node. */
interface Step {
  readonly edge: number;
}

/** Edges in their order, each with whether it is taken from its `from` end; consecutive ones of a channel become one stretch. */
function wayAlong(edges: readonly (readonly [TrackEdge, boolean])[]): Way {
  const stretches: Stretch[] = [];
  let lengthMm = 0;
  for (const [edge, isForward] of edges) {
    lengthMm += edge.lengthMm;
    const { channel, surface } = edge;
    const path = edge.path && (isForward ? edge.path : [...edge.path].reverse());
    const alongMm =
      edge.alongMm && ([edge.alongMm[isForward ? 0 : 1], edge.alongMm[isForward ? 1 : 0]] as const);
    const last = stretches.at(-1);
    if (
      last &&
      last.channel === channel &&
      last.surface === surface &&
      (path === undefined) === (last.path === undefined)
    ) {
      stretches[stretches.length - 1] = {
        ...last,
        lengthMm: last.lengthMm + edge.lengthMm,
        ...(path && last.path && { path: [...last.path, ...path.slice(1)] }),
        ...(alongMm && last.alongMm && { alongMm: [last.alongMm[0], alongMm[1]] }),
      };
    } else if (edge.lengthMm > 0) {
      stretches.push({
        lengthMm: edge.lengthMm,
        ...(channel !== undefined && { channel }),
        ...(alongMm && { alongMm }),
        ...(surface !== undefined && { surface }),
        ...(path && { path }),
      });
    }
  }
  return { state: "found", lengthMm, stretches };
}
