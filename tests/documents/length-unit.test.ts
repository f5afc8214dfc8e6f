import { afterAll, beforeAll, expect, test } from "vitest";
import { CommandTester } from "../../server/command/command.tester.ts";
import { planUnderCursor } from "../../server/language/feature.tester.ts";
import { hover } from "../../server/language/hover.ts";

/*
 * A length that follows from a way is shown in the unit of the plan, on every face: that of the stated lengths, and of boards in
 * inches if none is stated.
 */

const board = (
  size: string,
  [left, far, top]: readonly string[],
  stated = "",
) => `import { battery, build, busBar, cable, channel, circuit, load, surface } from "loomwright";
build({ name: "cabin", insulationC: 105 });
const wall = surface({ name: "wall", size: ${size} });
channel({ name: "trunking", on: wall, path: [{ ${left}, ${top} }, { ${far}, ${top} }] });
const house = battery({ name: "house", chemistry: "LiFePO4", capacityAh: 100, internalMilliohm: 5, at: { on: wall, ${left}, ${top} } });
const plus = busBar({ name: "plus", side: "positive", ratedA: 100, at: { on: wall, ${far}, ${top} } });
cable({ name: "fe‸ed", from: house.positive, to: plus.stud, gauge: 14, protect: 15 });
const lamp = load({ name: "lamp", currentA: 12, critical: true, at: { on: wall, ${left}, ${top} } });
circuit({ name: "lamp run", from: plus.stud, returnTo: house.negative, to: lamp, gauge: 16, protect: 15 });
${stated}`;

const metric = ["leftMm: 100", "leftMm: 7_000", "topMm: 300"];
const inches = ["leftIn: 4", "leftIn: 276", "topIn: 12"];
const plans = {
  "boards in inches": [board("{ widthIn: 300, heightIn: 30 }", inches), "ft"],
  "boards in millimetres": [board("{ widthMm: 8_000, heightMm: 700 }", metric), "m"],
  "a length stated in feet": [
    board(
      "{ widthMm: 8_000, heightMm: 700 }",
      metric,
      'circuit({ name: "fan", from: plus.stud, returnTo: house.negative, load: 1, oneWayFt: 6, gauge: 14, protect: 5 });',
    ),
    "ft",
  ],
  "a length stated in metres": [
    board(
      "{ widthIn: 300, heightIn: 30 }",
      inches,
      'circuit({ name: "fan", from: plus.stud, returnTo: house.negative, load: 1, oneWayM: 2, gauge: 14, protect: 5 });',
    ),
    "m",
  ],
} as const;

let project: CommandTester;
beforeAll(() => {
  project = new CommandTester();
});
afterAll(() => project.dispose());

/** Behind a number, or in the title of a column; not the m of "9 mm" or "mΩ/m". */
const inUnit = { ft: /(?:\d[ \u00a0]|, )ft\b/, m: /(?:\d[ \u00a0]|, )m\b/ };

test.each(Object.entries(plans))("%s", async (_, [marked, unit]) => {
  const other = unit === "ft" ? "m" : "ft";
  const { view, uri, position } = await planUnderCursor(marked);
  const contents = hover(view, uri, position)?.contents;
  const hovered = contents && typeof contents === "object" && "value" in contents ? contents.value : "";
  project.write("plan.ts", marked.replace("‸", ""));
  const run = async (...words: string[]) => (await project.run(words)).out;
  const faces = {
    check: await run("check"),
    wires: await run("schedule", "--table", "wire-schedule"),
    cuts: await run("schedule", "--table", "cut-list"),
    diagram: await run("draw"),
    report: await run("report", "--out", "report.html").then(() => project.read("report.html")),
  };
  expect(hovered).toMatch(inUnit[unit]);
  for (const [face, text] of Object.entries(faces)) {
    expect(text, face).toMatch(inUnit[unit]);
    if (face !== "report") expect(text, face).not.toMatch(inUnit[other]);
  }
});
