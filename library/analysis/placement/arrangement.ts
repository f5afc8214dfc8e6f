import { type ArrangedBody, type ArrangementTask, Board, type Spot } from "./arrangement-board.ts";
import { keyOfFault } from "./body-fault.ts";
import { bodyFaults } from "./body-faults.ts";
import { placedAt, withBody } from "./moved-body.ts";

/** Places for all parts of a task. */
export interface Arrangement {
  readonly places: readonly ArrangedBody[];
  /** mm² of copper times mm of length. */
  readonly copper: number;
  /** The faults of bodies with these places that there are not today. */
  readonly newFaults: number;
}

/**
 * Places for parts on a surface: none overlaps another part or a channel, leaves the surface, or is in a place that is kept free or out
 * of reach; each keeps the air that it and its neighbours state, the greater of two that face each other, at least 10 mm, and the
 * distances that the faults of bodies ask for: of fixtures, of heat, of bars within reach of a spanner, and ahead of lugs. Among those it
 * looks for short conductors of much copper, level and upright between the middles of the parts. Parts that have a place keep it. It is a
 * suggestion: no arrangement is proved to be the best.
 *
 * Simulated annealing (Kirkpatrick, Gelatt and Vecchi 1983, from memory) from five starts with fixed seeds, by a number of steps and
 * never by a clock: the same task gives the same places on every machine.
 *
 * @returns The best of each start that found such places, those without a new fault first, then those with the least copper. None is no
 *   proof that there are no such places.
 */
export function arrange(task: ArrangementTask): readonly Arrangement[] {
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
export function* arrangeInSteps(task: ArrangementTask): Generator<SearchProgress, readonly Arrangement[]> {
  const board = new Board(task);
  const faults = newFaultsOf(task);
  const found = new Map<string, Arrangement>();
  for (let start = 1; start <= starts; start++) {
    const progress = { start, starts };
    const states = yield* anneal(board, seeded(start), progress);
    let best: Arrangement | undefined;
    for (const state of states.toReversed()) {
      for (const isAligned of [true, false]) {
        yield progress;
        board.putAll(state);
        if (board.conflicts() > 0) break;
        if (isAligned) board.align();
        const places = board.arranged();
        const arrangement = { places, copper: board.copper(), newFaults: faults(places) };
        if (!best || betterFirst(arrangement, best) < 0) best = arrangement;
        if (best.newFaults === 0) break;
      }
      if (best?.newFaults === 0) break;
    }
    if (best) found.set(JSON.stringify(best.places), best);
  }
  return [...found.values()].sort(betterFirst);
}

function betterFirst(one: Arrangement, other: Arrangement): number {
  return one.newFaults - other.newFaults || one.copper - other.copper;
}

/** Counts the faults of bodies, with all parts at such places, that there are not today. */
function newFaultsOf({ facts, surface }: ArrangementTask): (places: readonly ArrangedBody[]) => number {
  const known = new Set(bodyFaults(facts).map(keyOfFault));
  return (places) => {
    let { layout } = facts;
    for (const { body, outline, turnedDeg } of places) {
      const at = { surface, x: outline.x, y: outline.y, turnedDeg };
      layout = withBody(layout, placedAt(layout, layout.bodies[body]!, at));
    }
    return bodyFaults({ ...facts, layout }).filter((fault) => !known.has(keyOfFault(fault))).length;
  };
}

const starts = 5;
const steps = 30_000;
/** As many are done without a pause. */
const stepsAtOnce = 250;
/** Of the sound states of a start, so many of the best are kept: the very best may have a fault that the search does not weigh. */
const mostStates = 20;

/** The best sound states that it met, the best one last. */
function* anneal(
  board: Board,
  random: () => number,
  progress: SearchProgress,
): Generator<SearchProgress, readonly (readonly Spot[])[]> {
  const { count } = board;
  const pieces = Array.from({ length: count }, (_, piece) => piece);
  for (const piece of pieces) board.put(piece, board.anywhere(piece, board.turnOf(piece, random), random));
  let copper = board.copper();
  let conflicts = board.conflicts();
  const areaMm2 = board.arranged().reduce((sum, { outline }) => sum + outline.width * outline.height, 0);
  // An overlap of a hundredth of all parts costs at first as much as the conductors, and in the end a hundred times that.
  const unit = (100 * Math.max(1, copper)) / Math.max(1, areaMm2);
  const hottest = Math.max(1, copper) / 2;
  const states: (readonly Spot[])[] = [];
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
    if (conflicts >= 0.5 || copper >= least) continue;
    least = copper;
    states.push(pieces.map((each) => board.spotOf(each)));
    if (states.length > mostStates) states.shift();
  }
  return states;
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
