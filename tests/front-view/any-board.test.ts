import fc from "fast-check";
import { expect, test } from "vitest";
import { textWidth } from "../../library/documents/diagram/text-measure.ts";
import { drawFrontViews, drawTemplates } from "../../library/documents/front-view/draw-front-view.ts";
import { templateDxf } from "../../library/documents/front-view/template-dxf.ts";
import { judge } from "../../library/judge.ts";
import { runExample } from "../../library/rules/page.tester.ts";
import { blots, piecesOf } from "../diagram/pieces-of-svg.ts";
import { sampledRuns } from "../setup/sampled.ts";

const measure = (text: string, isBold: boolean) => textWidth(text, 1, isBold ? "bold" : "regular");

const name = fc.constantFrom(
  "bar",
  "W".repeat(60),
  "Charger from the alternator of the old engine",
  "冷蔵庫と換気扇とポンプ",
  "🚐🔋💡",
  "<b>\"&'",
  "e\u0301\u0308\u0327",
);
const mm = (most: number) => fc.integer({ min: 0, max: most });
const part = fc.record({ name, left: mm(900), top: mm(600), width: mm(300), height: mm(200), air: mm(80) });
const point = fc.record({ left: mm(900), top: mm(600) });

/** Parts may overlap, hang over the edge, or have no size: each board is drawn all the same. */
test("on any board no words lie on others, and none leave the sheet", () => {
  fc.assert(
    fc.property(
      fc.array(part, { maxLength: 12 }),
      fc.array(fc.array(point, { minLength: 2, maxLength: 4 }), { maxLength: 3 }),
      fc.constantFrom(1, 0.1, 20),
      (parts, paths, factor) => {
        const at = ({ left, top }: { readonly left: number; readonly top: number }) =>
          `leftMm: ${left * factor}, topMm: ${top * factor}`;
        const plan = [
          `const board = surface({ name: "board", size: { widthMm: ${1000 * factor}, heightMm: ${700 * factor} } });`,
          ...parts.map((one) => {
            const size =
              one.width > 0 && one.height > 0
                ? `size: { widthMm: ${one.width * factor}, heightMm: ${one.height * factor} }, `
                : "";
            return `busBar({ name: ${JSON.stringify(one.name)}, ${size}air: { leftMm: ${one.air} }, at: { on: board, ${at(one)} },
  terminalsAt: { stud: { leftMm: 0, topMm: 0, leaves: "left" } } });`;
          }),
          ...paths.map(
            (path) => `channel({ on: board, path: [${path.map((one) => `{ ${at(one)} }`).join(", ")}] });`,
          ),
        ].join("\n");
        const { records, problems } = runExample(plan);
        const judged = judge(records, problems);
        expect(problems).toEqual([]);
        for (const { svg } of drawFrontViews(judged, { medium: "paper" })) {
          expect(svg).not.toContain("NaN");
          expect(blots({ ...piecesOf(svg, measure), segments: [] })).toEqual([]);
        }
        for (const template of drawTemplates(judged, "board.ts"))
          expect(templateDxf(template)).not.toContain("NaN");
      },
    ),
    { numRuns: sampledRuns(25) },
  );
});
