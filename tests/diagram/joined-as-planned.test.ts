// The picture connects the same terminals as the plan: read back from the SVG's lines, against the terminals in the network.

import { SaxesParser } from "saxes";
import { expect, test } from "vitest";
import type { Box } from "../../library/documents/diagram/drawing.ts";
import { displayName } from "../../library/model/display-name.ts";
import { correctNetworks, drawn, examplePlans, fileJudge } from "./drawn-plans.ts";

const judgedFile = fileJudge();

type Point = readonly [number, number];

test.each([...examplePlans, ...correctNetworks])("%s", async (file) => {
  const plan = await judgedFile(file);
  const network = plan.network?.network;
  if (!network) {
    expect(plan.circuits.every(({ circuit }) => !circuit.inNetwork)).toBe(true);
    return;
  }
  const { svg, elements } = await drawn(plan);
  const points = linePoints(svg);
  const partBoxes = new Map(
    elements.flatMap(({ kind, name, records, box }) =>
      kind === "part" ? [[`${records[0]} ${name}`, box] as const] : [],
    ),
  );
  const conductors = elements.filter(({ kind }) => kind === "conductor");
  expect(conductors.length).toBeGreaterThanOrEqual(network.conductors.length);
  for (const conductor of network.conductors) {
    const name = displayName(conductor.role === "return" ? `${conductor.name}, return` : conductor.name);
    const drawnAs = conductors.filter(
      (element) => element.name === name && element.records[0] === conductor.record,
    );
    expect(drawnAs, name).toHaveLength(1);
    const ends = [conductor.from, conductor.to].map((terminal) => {
      const part = network.parts[network.terminals[terminal]!.part]!;
      const box = partBoxes.get(`${part.record} ${displayName(part.name)}`);
      expect(box, part.name).toBeDefined();
      return box!;
    });
    const reached = ends.map((box) => points.get(drawnAs[0]!.id)!.some((point) => touches(point, box)));
    expect(reached, `${name} reaches both its parts`).toEqual([true, true]);
  }
});

/** Half a pixel for rounding. */
function touches([x, y]: Point, box: Box): boolean {
  return (
    x >= box.x - 0.5 && x <= box.x + box.width + 0.5 && y >= box.y - 0.5 && y <= box.y + box.height + 0.5
  );
}

/** By element: every point of the lines that are drawn directly in its group. */
function linePoints(svg: string): ReadonlyMap<string, readonly Point[]> {
  const found = new Map<string, Point[]>();
  const open: (string | undefined)[] = [];
  const parser = new SaxesParser();
  parser.on("opentag", ({ name, attributes }) => {
    const element = attributes["data-element"];
    if (name === "path" && open.at(-1) !== undefined) {
      const points = [...attributes.d!.matchAll(/[ML]\s*(-?[\d.]+)[ ,](-?[\d.]+)/g)].map(
        ([, x, y]): Point => [Number(x), Number(y)],
      );
      found.set(open.at(-1)!, [...(found.get(open.at(-1)!) ?? []), ...points]);
    }
    open.push(element ?? (name === "g" ? undefined : open.at(-1)));
  });
  parser.on("closetag", () => {
    open.pop();
  });
  parser.write(svg).close();
  return found;
}
