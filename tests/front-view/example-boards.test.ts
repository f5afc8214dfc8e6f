import { describe, expect, test } from "vitest";
import { textWidth } from "../../library/documents/diagram/text-measure.ts";
import { drawFrontViews } from "../../library/documents/front-view/draw-front-view.ts";
import { fileJudge } from "../diagram/drawn-plans.ts";
import { blots, piecesOf } from "../diagram/pieces-of-svg.ts";

const judgedFile = fileJudge();
const boards = [
  ...["northbound-van/van.ts", "library-bus/bus.ts", "river-launch/launch.ts"],
  ...["faulty-workshop/board.ts", "faulty-workshop/ways.ts"],
].map((file) => `examples/${file}`);
const measured = (svg: string) =>
  piecesOf(svg, (text, isBold) => textWidth(text, 1, isBold ? "bold" : "regular"));
const numbers = (record: number, role: string) => `W${record}${role === "return" ? "N" : ""}`;

/** A mark with its backing in the colour of the paper; the letter is in bold. */
const marks =
  /<g><path d="M\S+ \S+L\S+ \S+" fill="none" stroke="#ffffff"[^>]*\/><(?:path|circle)[^>]*\/><text[^>]*>[E!iha]<\/text><\/g>\n/g;

describe.each(boards)("the boards of %s", (file) => {
  const drawn = async (conductors: boolean) =>
    drawFrontViews(await judgedFile(file), { medium: "paper", conductors, numbers });

  test("no words lie on others, on a line, or off the sheet", async () => {
    for (const { svg, surfaceName } of await drawn(false))
      expect(blots(measured(svg.replace(marks, ""))), surfaceName).toEqual([]);
  });

  test("with conductors, no words lie on others or off the sheet", async () => {
    for (const { svg, surfaceName } of await drawn(true))
      expect(blots({ ...measured(svg), segments: [] }), surfaceName).toEqual([]);
  });

  test.each([false, true])("marks are over everything else, with conductors %s", async (conductors) => {
    for (const { svg, elements, surfaceName } of await drawn(conductors)) {
      const found = [...svg.matchAll(marks)];
      const noted = elements.filter(
        ({ kind, findings, box }) => kind !== "surface" && findings.length > 0 && box,
      );
      expect(found.length, surfaceName).toBe(noted.length);
      const [first, last] = [found[0]?.index ?? 0, found.at(-1)?.index ?? 0];
      const between = svg.slice(first, last).replace(marks, "");
      expect(between, surfaceName).toBe("");
      expect(svg.lastIndexOf('<g id="'), surfaceName).toBeLessThan(found[0]?.index ?? Infinity);
    }
  });

  test("no leader is longer than half of the longer side of its surface", async () => {
    // With conductors, the wall of the faulty ways has more words than room around its parts.
    for (const conductors of file.endsWith("ways.ts") ? [false] : [false, true])
      for (const { svg, surfaceName, elements } of await drawn(conductors)) {
        const { box } = elements.find(({ kind }) => kind === "surface")!;
        for (const [, ...ends] of svg.matchAll(
          /<path d="M(\S+) (\S+)L(\S+) (\S+)" fill="none" stroke="#444444" stroke-width="0.6"\/><circle [^>]*r="1.3"/g,
        )) {
          const [x1, y1, x2, y2] = ends.map(Number) as [number, number, number, number];
          expect(Math.hypot(x2 - x1, y2 - y1), `${surfaceName}, at ${x2} ${y2}`).toBeLessThan(
            Math.max(box!.width, box!.height) / 2,
          );
        }
      }
  });
});
