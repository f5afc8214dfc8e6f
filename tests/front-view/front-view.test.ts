import { SaxesParser } from "saxes";
import { describe, expect, test } from "vitest";
import { textWidth } from "../../library/documents/diagram/text-measure.ts";
import { drawFrontView, drawFrontViews } from "../../library/documents/front-view/draw-front-view.ts";
import type { FrontViewOptions } from "../../library/documents/front-view/front-view.ts";
import { judge } from "../../library/judge.ts";
import { runExample } from "../../library/rules/page.tester.ts";
import { blots, piecesOf } from "../diagram/pieces-of-svg.ts";
import { camperPlan } from "./camper-plan.ts";

function judged(plan: string) {
  const { records, problems } = runExample(plan);
  const judgement = judge(records, problems);
  expect({ problems, invalid: judgement.model.invalid }).toEqual({ problems: [], invalid: [] });
  return judgement;
}

const camper = judged(camperPlan);
const numbers: FrontViewOptions["numbers"] = (record, role) => `W${record}${role === "return" ? "N" : ""}`;
const drawn = (options: Partial<FrontViewOptions> = {}, plan = camper) =>
  drawFrontViews(plan, { medium: "paper", numbers, ...options });
const measured = (svg: string) =>
  piecesOf(svg, (text, isBold) => textWidth(text, 1, isBold ? "bold" : "regular"));

/** Attributes of every tag, read strictly. */
function tagsOf(svg: string) {
  const tags: Readonly<Record<string, string>>[] = [];
  const parser = new SaxesParser();
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", ({ attributes }) => tags.push(attributes));
  parser.write(svg).close();
  return tags;
}

describe("the front view of a surface", () => {
  test("there is one for each surface, in the order of the plan", () => {
    expect(drawn().map(({ title }) => title)).toEqual([
      "camper behind the bench, front view of Board behind the bench",
      "camper behind the bench, front view of Locker floor",
    ]);
    expect(drawn({}, judged(`battery({ chemistry: "AGM", capacityAh: 80 });`))).toEqual([]);
  });

  test.each([false, true])("each element has an id of its own, with conductors %s", (conductors) => {
    for (const { svg, elements } of drawn({ conductors })) {
      const tags = tagsOf(svg);
      const ids = tags.flatMap(({ id }) => id ?? []);
      expect(new Set(ids).size).toBe(ids.length);
      const pointed = tags.flatMap((attributes) => attributes["data-element"] ?? []);
      expect(new Set(pointed)).toEqual(new Set(elements.map(({ id }) => id)));
    }
  });

  test("a part carries the indices of its record and of its surface", () => {
    const [board] = drawn();
    const inverter = camper.model.layout!.bodies.find(({ name }) => name === "Inverter 2 kW")!;
    const tag = tagsOf(board!.svg).find(({ id }) => id === `body-${inverter.record}`);
    expect(tag?.["data-body"]).toBe(String(inverter.record));
    expect(tag?.["data-surface"]).toBe(String(camper.model.layout!.surfaces[0]!.record));
  });

  test("a part is where its place in the plan is, to scale", () => {
    const [board] = drawn();
    const { frame, elements } = board!;
    const { box } = elements.find(({ name }) => name === "Inverter 2 kW")!;
    expect((box!.x - frame.x) / frame.pxPerMm).toBeCloseTo(90, 6);
    expect((box!.y - frame.y) / frame.pxPerMm).toBeCloseTo(70, 6);
    expect(box!.width / frame.pxPerMm).toBeCloseTo(320, 6);
    // An SVG has 96 px an inch: at 1:5, 1 mm is a fifth of a millimetre on paper.
    expect(frame.pxPerMm).toBeCloseTo(96 / 25.4 / 5, 9);
  });

  test("no words lie on others, on a line, or off the sheet", () => {
    for (const { svg } of drawn()) {
      const pieces = measured(svg);
      expect(pieces.texts.length).toBeGreaterThan(20);
      expect(blots(pieces)).toEqual([]);
    }
  });

  test("with conductors, no words lie on others, and each end on the surface has its number", () => {
    for (const { svg, elements } of drawn({ conductors: true })) {
      const { texts } = measured(svg);
      expect(blots({ ...measured(svg), segments: [] })).toEqual([]);
      const [conductor] = elements.filter(
        ({ kind, name }) => kind === "conductor" && name === "Bank to switch",
      );
      const number = `W${conductor!.record}`;
      expect(texts.filter(({ text }) => text === number)).toHaveLength(1);
    }
    const inverter = camper.model.layout!.leads.find(({ name }) => name === "Inverter feed")!;
    const { texts } = measured(drawn({ conductors: true })[0]!.svg);
    expect(texts.filter(({ text }) => text === `W${inverter.record}`)).toHaveLength(2);
  });

  test("findings have marks in their shapes, and those of other places are counted", () => {
    const [board] = drawn();
    const found = board!.elements.filter(({ severity }) => severity !== undefined);
    expect(found.map(({ name }) => name)).toContain("Charger from the alternator");
    for (const { id } of found)
      expect(board!.svg).toMatch(new RegExp(`data-element="${id}"[^§]*?font-weight="bold"`));
    expect(board!.notices.join(" ")).toMatch(
      /findings about conductors, other surfaces or the plan are not marked here/,
    );
  });

  test("a thing's findings are part of its description, the surface's too", () => {
    const plan = judged(`
const board = surface({ name: "board", size: { widthMm: 400, heightMm: 300 } });
const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 80, size: { widthMm: 200, heightMm: 100, depthMm: 100 },
  at: { on: board, leftMm: 300, topMm: 20 } });
const bar = busBar({ name: "bar", size: { widthMm: 60, heightMm: 20 }, at: { on: board, leftMm: 310, topMm: 30 } });
channel({ name: "a slit", inside: { diameterMm: 2 }, on: board, path: [{ leftMm: 10, topMm: 200 }, { leftMm: 300, topMm: 200 }] });`);
    const [view] = drawn({}, plan);
    for (const { description, findings } of view!.elements)
      for (const finding of findings) expect(description).toContain(finding);
    expect(view!.elements[0]).toMatchObject({ kind: "surface", name: "board" });
    expect(view!.elements[0]!.findings).not.toEqual([]);
  });

  test("parts without a place are listed by name", () => {
    for (const { svg, description } of drawn()) {
      const { texts } = measured(svg);
      expect(texts.map(({ text }) => text)).toContain("Water pump");
      expect(description).toContain("Without a place: Water pump.");
    }
  });

  test("channels name how many conductors are in them", () => {
    const words = measured(drawn()[0]!.svg).texts.map(({ text }) => text);
    expect(words).toContain("Main trunking · 7 conductors");
    expect(words).toContain("to Mast lamp");
  });

  test("dimensions are running, from the top left corner, and the whole size is beside them", () => {
    const words = measured(drawn()[0]!.svg).texts.map(({ text }) => text);
    for (const left of ["90", "300", "540", "960", "1,200", "800"]) expect(words).toContain(left);
  });

  test("a plan in inches is drawn in inches, with the fractions of a tape", () => {
    const plan = judged(`
const board = surface({ name: "board", size: { widthIn: 48, heightIn: 30 } });
busBar({ name: "bar", size: { widthIn: 7.5, heightIn: 1.25 }, at: { on: board, leftIn: 10.0625, topIn: 3.3 } });`);
    const words = measured(drawn({}, plan)[0]!.svg).texts.map(({ text }) => text);
    for (const length of ["10 1/16", "3.3", "7 1/2 × 1 1/4", "48", "30"]) expect(words).toContain(length);
  });

  test("the same plan gives the same bytes", () => {
    const again = judged(camperPlan);
    expect(drawn({ conductors: true }, again)).toEqual(drawn({ conductors: true }));
  });

  test("there is no view of a surface that the plan does not have", () => {
    expect(drawFrontView(camper, 7, { medium: "paper" })).toBeUndefined();
  });
});
