import { describe, expect, test } from "vitest";
import type { DrawingOptions } from "../../library/documents/diagram/drawing.ts";
import { coloursOnPaper } from "../../library/documents/diagram/insulation-colours.ts";
import { shownColours } from "../../library/documents/diagram/shown-numbers.ts";
import { textWidth } from "../../library/documents/diagram/text-measure.ts";
import { numberWires } from "../../library/documents/schedules/wire-numbers.ts";
import { readWireNumbers } from "../../library/documents/schedules/wire-numbers-file.ts";
import { wiresOf } from "../../library/documents/schedules/wires.ts";
import { drawn, judgedText } from "./drawn-plans.ts";
import { blots, type Measure, piecesOf } from "./pieces-of-svg.ts";

const plan =
  await judgedText(`import { battery, build, busBar, cable, chassis, circuit, fusePanel } from "loomwright";
build({ name: "colours", voltage: 12 });
const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100 });
const plus = busBar({ name: "plus", side: "positive" });
const minus = busBar({ name: "minus", side: "negative" });
const frame = chassis({ name: "frame", milliohm: 1 });
cable({ name: "main", from: bank.positive, to: plus.stud, lengthM: 1, mm2: 25, protect: 100 });
cable({ name: "main return", from: bank.negative, to: minus.stud, lengthM: 1, mm2: 25 });
cable({ name: "bond", from: minus.stud, to: frame.bond, lengthM: 1, mm2: 25, colour: "green with yellow stripe" });
const panel = fusePanel({ name: "panel", positions: 8 });
circuit({ name: "feeder", from: plus.stud, returnTo: minus.stud, to: panel, oneWayM: 1, mm2: 16, protect: 60, returnColour: "yellow" });
circuit({ name: "lamp", from: panel.branch, load: 1, oneWayM: 3, mm2: 1.5, protect: 3, colour: "white", returnColour: "brown" });
circuit({ name: "fan", from: panel.branch, load: 2, oneWayM: 3, mm2: 1.5, protect: 3, colour: "natural" });
`);
const colours = shownColours(numberWires(wiresOf(plan), readWireNumbers(undefined)));
const measure: Measure = (text, bold) => textWidth(text, 1, bold ? "bold" : "regular");

async function groupOf(name: string, options: Partial<DrawingOptions> = {}): Promise<string> {
  const { svg } = await drawn(plan, { colours, ...options });
  return new RegExp(`<g[^>]*data-element[^>]*aria-label="${name}"[^>]*>.*</g>`).exec(svg)![0];
}

describe("the colour edition", () => {
  test.each([
    ["main", [coloursOnPaper.red]],
    ["main return", [coloursOnPaper.black]],
    ["bond", [coloursOnPaper.green, coloursOnPaper.yellow]],
    ["feeder, return", [coloursOnPaper.yellow]],
    ["lamp", [coloursOnPaper.white]],
    ["lamp, return", [coloursOnPaper.brown]],
    ["fan", []],
  ])("%s is drawn in its colours, between lines of ink", async (name, expected) => {
    const group = await groupOf(name);
    const cores = [...group.matchAll(/stroke="(#\w+)" stroke-width="3"/g)].map(([, colour]) => colour);
    expect([...new Set(cores)]).toEqual(expected);
    expect(/stroke="#000000" stroke-width="4.6"/.test(group)).toBe(expected.length > 0);
    // A return is dashed in any edition: its polarity never rests on the colour.
    if (/return|bond/.test(name)) expect(group).not.toMatch(/<path [^>]*stroke-width="3"\/>/);
  });

  test.each([
    ["bond", "25 mm² · 1 m · green with yellow stripe"],
    ["lamp", "1.5 mm² · 3 m · white"],
    ["fan", "1.5 mm² · 3 m · natural"],
  ])("the label of %s names its colour", async (name, text) => {
    expect(await groupOf(name)).toContain(`${text}</text>`);
  });

  test("legend and title block name them, and no label overlaps", async () => {
    const { svg } = await drawn(plan, { colours });
    const pieces = piecesOf(svg, measure);
    const texts = pieces.texts.map(({ text }) => text);
    for (const text of ["red", "green with yellow stripe", "wiring diagram, in conductor colours"])
      expect(texts).toContain(text);
    expect(texts).not.toContain("natural");
    expect(blots(pieces)).toEqual([]);
  });

  test("on the screen, the page gives the colours", async () => {
    const { svg } = await drawn(plan, { colours, medium: "screen" });
    expect(svg).toContain("var(--loomwright-colour-green, currentColor)");
    expect(svg).not.toMatch(/#[0-9a-f]{6}/i);
  });

  test("in the one-line view, a line for two conductors has no colour", async () => {
    const { svg } = await drawn(plan, { colours, view: "one-line" });
    expect(await groupOf("lamp", { view: "one-line" })).not.toContain('stroke-width="4.6"');
    expect(svg).toContain(coloursOnPaper.red);
  });

  test("without it, a drawing is black on white", async () => {
    const { svg } = await drawn(plan);
    for (const [, colour] of svg.matchAll(/(?:fill|stroke)="(#\w+)"/g))
      expect(["#000000", "#444444"]).toContain(colour);
    expect(svg).not.toContain("natural");
  });
});
