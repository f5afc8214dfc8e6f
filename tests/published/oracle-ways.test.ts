import { describe, expect, it } from "vitest";
import { placementOf } from "../../library/analysis/placement/placement.ts";
import { readModel } from "../../library/model/read-model.ts";
import { runExample } from "../../library/rules/page.tester.ts";
import { published } from "./published-data.ts";

/**
 * The ways of conductors against a second engine: written in another language from the page library/analysis/placement/method.md (see
 * oracle-ways.py), with Dijkstra's algorithm on the grid of all edges where the library tries the two corners first. Neither proves the
 * other right; a slip in one of them shows.
 */
const { cases } = published<{ readonly cases: readonly Case[] }>("oracle-ways.json");

type Pair = readonly [number, number];

interface Case {
  readonly seed: number;
  readonly surfaces: readonly { readonly size: Pair; readonly keepFree: readonly (readonly number[])[] }[];
  readonly channels: readonly {
    readonly surface?: number;
    readonly path?: readonly Pair[];
    readonly from?: { readonly surface: number; readonly point: Pair };
    readonly to?: { readonly surface: number; readonly point: Pair };
    readonly length?: number;
  }[];
  readonly parts: readonly {
    readonly at?: { readonly surface: number; readonly point: Pair };
    readonly size?: Pair;
    readonly terminal?: { readonly point: Pair; readonly leaves?: string };
    readonly endOf?: number;
    readonly beyond?: number;
  }[];
  readonly runs: readonly {
    readonly from: number;
    readonly to: number;
    readonly through?: readonly number[];
  }[];
  /** Null: no way. */
  readonly waysMm: readonly (number | null)[];
}

const point = ([leftMm, topMm]: Pair) => `leftMm: ${leftMm}, topMm: ${topMm}`;

function planOf({ surfaces, channels, parts, runs }: Case): string {
  return [
    ...surfaces.map(({ size: [widthMm, heightMm], keepFree }, index) => {
      const free = keepFree.map(
        ([leftMm, topMm, width, height]) =>
          `{ leftMm: ${leftMm}, topMm: ${topMm}, widthMm: ${width}, heightMm: ${height} }`,
      );
      return `const s${index} = surface({ size: { widthMm: ${widthMm}, heightMm: ${heightMm} }, keepFree: [${free}] });`;
    }),
    ...channels.map(({ surface, path, from, to, length }, index) =>
      path
        ? `const c${index} = channel({ on: s${surface}, path: [${path.map((one) => `{ ${point(one)} }`)}] });`
        : `const c${index} = channel({ from: { on: s${from!.surface}, ${point(from!.point)} }, lengthM: ${length! / 1_000}${
            to ? `, to: { on: s${to.surface}, ${point(to.point)} }` : ""
          } });`,
    ),
    ...parts.map(({ at, size, terminal, endOf, beyond }, index) => {
      if (!at) return `const p${index} = busBar({ at: { endOf: c${endOf}, beyondM: ${beyond! / 1_000} } });`;
      const leaves = terminal?.leaves ? `, leaves: "${terminal.leaves}"` : "";
      const spot = terminal ? `, terminalsAt: { stud: { ${point(terminal.point)}${leaves} } }` : "";
      const [widthMm, heightMm] = size!;
      return `const p${index} = busBar({ at: { on: s${at.surface}, ${point(at.point)} }, size: { widthMm: ${widthMm}, heightMm: ${heightMm} }${spot} });`;
    }),
    ...runs.map(
      ({ from, to, through }) =>
        `cable({ from: p${from}.stud, to: p${to}.stud, lengthM: 1, gauge: 4${
          through ? `, through: [${through.map((one) => `c${one}`)}]` : ""
        } });`,
    ),
  ].join("\n");
}

describe("ways worked out twice", () => {
  it.each(cases)("layout $seed", (layout) => {
    const { records, problems } = runExample(planOf(layout));
    expect(problems).toEqual([]);
    const model = readModel(records);
    expect(model.invalid).toEqual([]);
    const ways = placementOf(model.layout!).ways.map((way) => (way.state === "found" ? way.lengthMm : null));
    expect(ways.map((way) => way === null)).toEqual(layout.waysMm.map((way) => way === null));
    ways.forEach((way, index) => {
      if (way !== null) expect(way, `run ${index}`).toBeCloseTo(layout.waysMm[index]!, 6);
    });
  });

  it("are of every kind: by channels, in the open, named, and none", () => {
    const all = cases.flatMap(({ waysMm }) => waysMm);
    expect(all.length).toBeGreaterThan(600);
    expect(all.filter((way) => way === null).length).toBeGreaterThan(30);
  });
});
