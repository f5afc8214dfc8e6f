import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sampledRuns } from "../../../../tests/setup/sampled.ts";
import { type SparseSystem, sparseSystem } from "./sparse-lu.ts";
import { eliminationOrder } from "./sparse-order.ts";

describe("sparse LU", () => {
  it("agrees with dense elimination on random networks, micro-ohms beside kilo-ohms", () => {
    fc.assert(
      fc.property(anyNetwork, ({ nodes, branches, coupling }) => {
        const { system, place } = systemOf(nodes, [...branches, ...coupling]);
        const dense = Array.from({ length: nodes }, () => new Array<number>(nodes).fill(0));
        const add = (row: number, column: number, value: number) => {
          dense[row]![column]! += value;
          system.values[system.entryAt(place[row]!, place[column]!)]! += value;
        };
        // Each node is weakly connected to ground, to give one solution.
        for (let node = 0; node < nodes; node++) add(node, node, 1e-3);
        for (const { a, b, siemens } of branches) {
          if (a === b) continue;
          add(a, a, siemens);
          add(b, b, siemens);
          add(a, b, -siemens);
          add(b, a, -siemens);
        }
        // One-sided, as a converter couples its input to its output.
        for (const { a, b, siemens } of coupling) if (a < b) add(a, b, Math.min(siemens, 1e-3));
        const b = Float64Array.from({ length: nodes }, (_, node) => Math.sin(1 + node));
        const expected = denseSolution(dense, b);
        expect(system.factor()).toBeGreaterThan(0);
        const solution = solveRefined(system, place, dense, b);
        const largest = Math.max(...expected.map(Math.abs));
        for (let node = 0; node < nodes; node++) {
          expect(Math.abs(solution[node]! - expected[node]!)).toBeLessThanOrEqual(1e-6 * largest);
        }
      }),
      { numRuns: sampledRuns(300) },
    );
  });

  it("has small residuals without any refinement", () => {
    fc.assert(
      fc.property(anyNetwork, ({ nodes, branches }) => {
        const { system, place } = systemOf(nodes, branches);
        const rows = laplacian(system, place, nodes, branches);
        const b = Float64Array.from({ length: nodes }, (_, node) => Math.cos(node));
        const x = new Float64Array(nodes);
        for (let node = 0; node < nodes; node++) x[place[node]!] = b[node]!;
        system.factor();
        system.solve(x);
        rows.forEach((row, node) => {
          const left = row.reduce((sum, value, column) => sum + value * x[place[column]!]!, -b[node]!);
          const size = row.reduce((sum, value, column) => sum + Math.abs(value * x[place[column]!]!), 1);
          expect(Math.abs(left)).toBeLessThanOrEqual(1e-12 * size);
        });
      }),
      { numRuns: sampledRuns(200) },
    );
  });

  it("tells a matrix that is not positive definite, and one that is singular, and solves all the same", () => {
    const { system, place } = systemOf(2, [{ a: 0, b: 1, siemens: 1 }]);
    const [first, second] = [place[0]!, place[1]!];
    const set = (one: number, both: number, two: number) => {
      system.values[system.entryAt(first, first)] = one;
      system.values[system.entryAt(first, second)] = both;
      system.values[system.entryAt(second, first)] = both;
      system.values[system.entryAt(second, second)] = two;
    };
    set(2, -1, 2);
    expect(system.factor()).toBeGreaterThan(0);
    set(1, -1, 1);
    expect(system.factor()).toBe(0);
    set(1, -2, 1);
    expect(system.factor()).toBeLessThan(0);
    const x = Float64Array.of(1, 1);
    system.solve(x);
    expect([...x].every(Number.isFinite)).toBe(true);
  });
});

describe("the order of elimination", () => {
  it("leaves a star of 20,000 branches without any fill, and takes each unknown once", () => {
    const branches = Array.from({ length: 20_000 }, (_, index) => [0, index + 1]).flat();
    const order = eliminationOrder(20_001, branches);
    expect(order?.upper.length).toBe(20_000);
    expect(new Set(order?.place).size).toBe(20_001);
  });

  it("grows in proportion to two bus bars with devices between them", () => {
    const work = (devices: number) => {
      const pairs: number[] = [];
      for (let device = 0; device < devices; device++) {
        const [plus, minus] = [2 + 2 * device, 3 + 2 * device];
        pairs.push(0, plus, plus, minus, minus, 1);
      }
      return eliminationOrder(2 + 2 * devices, pairs)?.work ?? Number.NaN;
    };
    expect(work(3000)).toBeLessThan(10.1 * work(300));
  });

  it("gives up on a mesh that nobody could build", () => {
    const pairs: number[] = [];
    for (let one = 0; one < 200; one++) for (let other = 0; other < one; other++) pairs.push(one, other);
    expect(eliminationOrder(200, pairs, 10_000)).toBeUndefined();
    expect(eliminationOrder(200, pairs)?.upper.length).toBe((200 * 199) / 2);
  });
});

interface TestBranch {
  readonly a: number;
  readonly b: number;
  readonly siemens: number;
}

const anyNetwork = fc.integer({ min: 1, max: 40 }).chain((nodes) => {
  const node = fc.integer({ min: 0, max: nodes - 1 });
  const branch = fc.record({
    a: node,
    b: node,
    siemens: fc.double({ min: -3, max: 6, noNaN: true }).map((decades) => 10 ** decades),
  });
  return fc.record({
    nodes: fc.constant(nodes),
    branches: fc.array(branch, { maxLength: 120 }),
    coupling: fc.array(branch, { maxLength: 5 }),
  });
});

function systemOf(
  nodes: number,
  branches: readonly TestBranch[],
): { system: SparseSystem; place: Int32Array } {
  const pairs = branches.flatMap(({ a, b }) => [a, b]);
  const order = eliminationOrder(nodes, pairs)!;
  return { system: sparseSystem(order), place: order.place };
}

function laplacian(
  system: SparseSystem,
  place: Int32Array,
  nodes: number,
  branches: readonly TestBranch[],
): number[][] {
  const rows = Array.from({ length: nodes }, () => new Array<number>(nodes).fill(0));
  const add = (row: number, column: number, value: number) => {
    rows[row]![column]! += value;
    system.values[system.entryAt(place[row]!, place[column]!)]! += value;
  };
  for (let node = 0; node < nodes; node++) add(node, node, 1);
  for (const { a, b, siemens } of branches) {
    if (a === b) continue;
    add(a, a, siemens);
    add(b, b, siemens);
    add(a, b, -siemens);
    add(b, a, -siemens);
  }
  return rows;
}

/** With two corrections; each step of Newton's method is one. */
function solveRefined(
  system: SparseSystem,
  place: Int32Array,
  dense: readonly (readonly number[])[],
  b: Float64Array,
): number[] {
  const x = new Array<number>(b.length).fill(0);
  for (let round = 0; round < 3; round++) {
    const left = new Float64Array(b.length);
    dense.forEach((row, node) => {
      left[place[node]!] = b[node]! - row.reduce((sum, value, column) => sum + value * x[column]!, 0);
    });
    system.solve(left);
    x.forEach((_, node) => {
      x[node]! += left[place[node]!]!;
    });
  }
  return x;
}

/** Gaussian elimination with partial pivoting, corrected twice with its own residual. */
function denseSolution(dense: readonly (readonly number[])[], b: Float64Array): number[] {
  const size = b.length;
  const x = new Array<number>(size).fill(0);
  for (let round = 0; round < 3; round++) {
    const rows = dense.map((row, node) => [
      ...row,
      b[node]! - row.reduce((sum, value, column) => sum + value * x[column]!, 0),
    ]);
    for (let column = 0; column < size; column++) {
      let best = column;
      for (let row = column + 1; row < size; row++) {
        if (Math.abs(rows[row]![column]!) > Math.abs(rows[best]![column]!)) best = row;
      }
      [rows[column], rows[best]] = [rows[best]!, rows[column]!];
      for (let row = column + 1; row < size; row++) {
        const multiple = rows[row]![column]! / rows[column]![column]!;
        if (multiple === 0) continue;
        for (let at = column; at <= size; at++) rows[row]![at]! -= multiple * rows[column]![at]!;
      }
    }
    for (let row = size - 1; row >= 0; row--) {
      for (let column = row + 1; column < size; column++) {
        rows[row]![size]! -= rows[row]![column]! * rows[column]![size]!;
      }
      rows[row]![size]! /= rows[row]![row]!;
    }
    x.forEach((_, node) => {
      x[node]! += rows[node]![size]!;
    });
  }
  return x;
}
