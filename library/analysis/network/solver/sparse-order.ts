/**
 * The order of elimination of the unknowns of a sparse, structurally symmetric system, and its fill-in: minimum degree, the
 * unknown with the fewest neighbours first.
 *
 * The order matters: a bus bar with a thousand cables eliminated first would connect all thousand far ends with each
 * other; eliminated last it connects none. Networks of cables are nearly trees, where minimum degree causes almost no fill-in.
 * W. F. Tinney, J. W. Walker, "Direct solutions of sparse network equations by optimally ordered triangular
 * factorization", Proc. IEEE 55 (1967), scheme 2.
 */
export interface EliminationOrder {
  /** By unknown: its place in the order. */
  readonly place: Int32Array;
  /** Upper factor, row by row in that order: columns of row `i` are `upper[upperStart[i] … upperStart[i + 1] − 1]`, ascending. */
  readonly upperStart: Int32Array;
  readonly upper: Int32Array;
  /** Multiplications that update an entry in one factorisation. */
  readonly work: number;
}

/**
 * @param pairs Indices of unknowns that meet in an equation, two and two; repeated and self-paired ones do no harm.
 * @returns undefined if the elimination would take more than `mostWork` multiplications: no real network is so meshed.
 *   One of 10,000 cables takes some 100,000.
 */
export function eliminationOrder(
  unknowns: number,
  pairs: ArrayLike<number>,
  mostWork = 10_000_000,
): EliminationOrder | undefined {
  const graph = new GrowingGraph(unknowns, pairs.length);
  for (let index = 0; index + 1 < pairs.length; index += 2) graph.join(pairs[index]!, pairs[index + 1]!);
  const queue = new DegreeQueue(graph.degree);
  const place = new Int32Array(unknowns).fill(-1);
  const upperStart = new Int32Array(unknowns + 1);
  const neighbours: number[] = [];
  const upperOfUnknowns: number[] = [];
  let work = 0;
  for (let step = 0; step < unknowns; step++) {
    const pivot = queue.takeLowest();
    place[pivot] = step;
    graph.neighboursLeft(pivot, place, neighbours);
    work += neighbours.length * neighbours.length;
    if (work > mostWork) return undefined;
    for (const neighbour of neighbours) {
      upperOfUnknowns.push(neighbour);
      graph.degree[neighbour]! -= 1;
    }
    for (let one = 0; one < neighbours.length; one++) {
      for (let other = 0; other < one; other++) graph.join(neighbours[one]!, neighbours[other]!);
    }
    for (const neighbour of neighbours) queue.move(neighbour, graph.degree[neighbour]!);
    upperStart[step + 1] = upperOfUnknowns.length;
  }
  const upper = Int32Array.from(upperOfUnknowns, (unknown) => place[unknown]!);
  for (let row = 0; row < unknowns; row++) upper.subarray(upperStart[row]!, upperStart[row + 1]!).sort();
  return { place, upperStart, upper, work };
}

/** An undirected graph that only gains edges. A hash table of the edges keeps each of them once. */
class GrowingGraph {
  readonly degree: Int32Array;
  /** Edges, counted once each. */
  joined = 0;
  private readonly firstOf: Int32Array;
  private to: Int32Array;
  private next: Int32Array;
  private used = 0;
  private low: Int32Array;
  private high: Int32Array;

  constructor(nodes: number, expectedEdges: number) {
    this.degree = new Int32Array(nodes);
    this.firstOf = new Int32Array(nodes).fill(-1);
    const capacity = 2 ** Math.ceil(Math.log2(4 * expectedEdges + 16));
    this.to = new Int32Array(capacity);
    this.next = new Int32Array(capacity);
    this.low = new Int32Array(capacity).fill(-1);
    this.high = new Int32Array(capacity);
  }

  join(one: number, other: number): void {
    if (one === other || !this.remember(Math.min(one, other), Math.max(one, other))) return;
    this.joined += 1;
    if (2 * this.joined > this.low.length) this.growTable();
    this.list(one, other);
    this.list(other, one);
    this.degree[one]! += 1;
    this.degree[other]! += 1;
  }

  /** Puts the neighbours without a place yet into `into`. */
  neighboursLeft(node: number, place: Int32Array, into: number[]): void {
    into.length = 0;
    for (let entry = this.firstOf[node]!; entry >= 0; entry = this.next[entry]!) {
      if (place[this.to[entry]!]! < 0) into.push(this.to[entry]!);
    }
  }

  private list(node: number, neighbour: number): void {
    if (this.used === this.to.length) {
      this.to = longer(this.to);
      this.next = longer(this.next);
    }
    this.to[this.used] = neighbour;
    this.next[this.used] = this.firstOf[node]!;
    this.firstOf[node] = this.used;
    this.used += 1;
  }

  /** False if the edge was known already. */
  private remember(low: number, high: number): boolean {
    const mask = this.low.length - 1;
    let slot = (Math.imul(low, 0x9e3779b1) ^ Math.imul(high, 0x85ebca6b)) & mask;
    slot = (slot ^ (slot >>> 7)) & mask;
    while (this.low[slot]! >= 0) {
      if (this.low[slot] === low && this.high[slot] === high) return false;
      slot = (slot + 1) & mask;
    }
    this.low[slot] = low;
    this.high[slot] = high;
    return true;
  }

  private growTable(): void {
    const { low, high } = this;
    this.low = new Int32Array(2 * low.length).fill(-1);
    this.high = new Int32Array(2 * low.length);
    for (let slot = 0; slot < low.length; slot++) {
      if (low[slot]! >= 0) this.remember(low[slot]!, high[slot]!);
    }
  }
}

function longer(list: Int32Array): Int32Array {
  const grown = new Int32Array(2 * list.length);
  grown.set(list);
  return grown;
}

/** Nodes by their degree; taking one and moving one take the same time for any number of nodes. */
class DegreeQueue {
  private readonly firstOf: Int32Array;
  private readonly before: Int32Array;
  private readonly after: Int32Array;
  private readonly degreeOf: Int32Array;
  private lowest = 0;

  constructor(degree: Int32Array) {
    const nodes = degree.length;
    this.firstOf = new Int32Array(nodes + 1).fill(-1);
    this.before = new Int32Array(nodes);
    this.after = new Int32Array(nodes);
    this.degreeOf = Int32Array.from(degree);
    for (let node = nodes - 1; node >= 0; node--) this.insert(node);
  }

  takeLowest(): number {
    while (this.firstOf[this.lowest]! < 0) this.lowest += 1;
    const node = this.firstOf[this.lowest]!;
    this.remove(node);
    return node;
  }

  move(node: number, degree: number): void {
    if (degree === this.degreeOf[node]) return;
    this.remove(node);
    this.degreeOf[node] = degree;
    this.insert(node);
    if (degree < this.lowest) this.lowest = degree;
  }

  private insert(node: number): void {
    const degree = this.degreeOf[node]!;
    const first = this.firstOf[degree]!;
    this.before[node] = -1;
    this.after[node] = first;
    if (first >= 0) this.before[first] = node;
    this.firstOf[degree] = node;
  }

  private remove(node: number): void {
    const before = this.before[node]!;
    const after = this.after[node]!;
    if (before >= 0) this.after[before] = after;
    else this.firstOf[this.degreeOf[node]!] = after;
    if (after >= 0) this.before[after] = before;
  }
}
