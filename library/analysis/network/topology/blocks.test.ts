import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { joinedBy } from "../../../model/disjoint-sets.ts";
import { blocksOf } from "./blocks.ts";
import { graphOf } from "./spanning-forest.ts";

const node = fc.integer({ min: 0, max: 11 });
const ends = fc.tuple(node, node);
const graphs = fc.record({
  edges: fc.array(ends, { minLength: 1, maxLength: 18 }),
  pairs: fc.array(ends, { minLength: 1, maxLength: 8 }),
});

const blocksFrom = (edges: readonly (readonly [number, number])[]) =>
  blocksOf(
    graphOf(
      12,
      Int32Array.from(edges, ([a]) => a),
      Int32Array.from(edges, ([, b]) => b),
    ),
  );

describe("the first crossings of blocks", () => {
  it("of a sole link are by the first pair that the link alone connects", () => {
    fc.assert(
      fc.property(graphs, ({ edges, pairs }) => {
        const found = new Map(
          blocksFrom(edges)
            .firstCrossings(pairs)
            .flatMap((one) => (one.edges.length === 1 ? [[one.edges[0]!, one.pair] as const] : [])),
        );
        const all = joinedBy(
          12,
          edges.map(([a, b]) => ({ a, b })),
        );
        edges.forEach((_, edge) => {
          const without = joinedBy(
            12,
            edges.flatMap(([a, b], index) => (index === edge ? [] : [{ a, b }])),
          );
          const first = pairs.findIndex(
            ([one, other]) => all.find(one) === all.find(other) && without.find(one) !== without.find(other),
          );
          expect(found.get(edge) ?? -1).toBe(first);
        });
      }),
    );
  });

  it("are in the blocks between the two nodes of their pair, and the first pair through a block is among them", () => {
    fc.assert(
      fc.property(graphs, ({ edges, pairs }) => {
        const blocks = blocksFrom(edges);
        const crossings = blocks.firstCrossings(pairs);
        const between = pairs.map(([one, other]) => new Set(blocks.between(one, other)));
        for (const { pair, edges: inBlock, nodes } of crossings) {
          expect(inBlock.every((edge) => between[pair]!.has(edge))).toBe(true);
          const touched = new Set(inBlock.flatMap((edge) => edges[edge]!));
          expect(nodes.every((one) => touched.has(one))).toBe(true);
          expect(nodes[0]).not.toBe(nodes[1]);
        }
        edges.forEach((_, edge) => {
          const first = between.findIndex((set) => set.has(edge));
          const crossed = crossings.filter(({ edges: inBlock }) => inBlock.includes(edge));
          expect(Math.min(...crossed.map(({ pair }) => pair))).toBe(
            first < 0 ? Number.POSITIVE_INFINITY : first,
          );
        });
      }),
    );
  });
});
