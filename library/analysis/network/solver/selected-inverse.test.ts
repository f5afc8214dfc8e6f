import fc from "fast-check";
import { expect, test } from "vitest";
import { sampledRuns } from "../../../../tests/setup/sampled.ts";
import { solveDense } from "./dense-solution.tester.ts";
import { sparseInverse } from "./selected-inverse.ts";

/** Any resistances between up to 12 nodes and the reference. Each node is connected to one before it, so none floats. */
const anyResistances = fc
  .record({
    nodes: fc.integer({ min: 1, max: 12 }),
    tree: fc.array(fc.nat(), { minLength: 12, maxLength: 12 }),
    more: fc.array(fc.tuple(fc.nat({ max: 11 }), fc.nat({ max: 11 })), { maxLength: 12 }),
    ohm: fc.array(fc.double({ min: 0.001, max: 10, noNaN: true }), { minLength: 24, maxLength: 24 }),
  })
  .map(({ nodes, tree, more, ohm }) => {
    const a = Array.from({ length: nodes }, (_, node) => node);
    const b = a.map((node) => ((tree[node] as number) % (node + 1)) - 1);
    for (const [one, other] of more) {
      if (one >= nodes || other >= nodes) continue;
      a.push(one);
      b.push(other);
    }
    return { nodes, a, b, ohm: ohm.slice(0, a.length) };
  });

test("voltages and entries of the inverse agree with a dense solution", () => {
  fc.assert(
    fc.property(anyResistances, ({ nodes, a, b, ohm }) => {
      const matrix = Array.from({ length: nodes }, () => new Array<number>(nodes).fill(0));
      ohm.forEach((value, at) => {
        const [one, other] = [a[at] as number, b[at] as number];
        for (const [row, column, sign] of [
          [one, one, 1],
          [other, other, 1],
          [one, other, -1],
          [other, one, -1],
        ] as const) {
          if (row >= 0 && column >= 0) (matrix[row] as number[])[column]! += sign / value;
        }
      });
      const inverse = sparseInverse(nodes, { a, b, ohm }, [0, nodes - 1]);
      if (!inverse) throw new Error("too meshed");
      for (let node = 0; node < nodes; node++) {
        const unit = Array.from({ length: nodes }, (_, at) => (at === node ? 1 : 0));
        const column = solveDense(matrix, unit);
        const voltages = Float64Array.from(unit);
        inverse.solve(voltages);
        voltages.forEach((value, at) => {
          expect(Math.abs(value - (column[at] as number))).toBeLessThan(1e-9 * (1 + Math.abs(value)));
        });
        expect(inverse.entry(node, node)).toBeCloseTo(column[node] as number, 9);
      }
      ohm.forEach((_, at) => {
        const [one, other] = [a[at] as number, b[at] as number];
        if (one < 0 || other < 0) return;
        const unit = Array.from({ length: nodes }, (_, node) => (node === one ? 1 : 0));
        expect(inverse.entry(other, one)).toBeCloseTo(solveDense(matrix, unit)[other] as number, 9);
      });
      expect(inverse.entry(0, nodes - 1)).toBe(inverse.entry(nodes - 1, 0));
    }),
    { numRuns: sampledRuns(300) },
  );
});
