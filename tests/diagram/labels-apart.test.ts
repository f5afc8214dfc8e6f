import { describe, expect, test } from "vitest";
import type { View } from "../../library/documents/diagram/drawing.ts";
import { textWidth } from "../../library/documents/diagram/text-measure.ts";
import type { Judgement } from "../../library/judge.ts";
// @ts-expect-error the generator is plain JavaScript, for the bench that runs it as it is
import { networkPlanText, planText } from "../bench/plan-text.mjs";
import { sampled } from "../setup/sampled.ts";
import { correctNetworks, drawn, examplePlans, fileJudge, judgedText } from "./drawn-plans.ts";
import { blots, type Measure, piecesOf } from "./pieces-of-svg.ts";

const judgedFile = fileJudge();

const views: readonly View[] = ["one-line", "wiring"];
const measure: Measure = (text, bold) => textWidth(text, 1, bold ? "bold" : "regular");

/** In this run's share of the views, without a scenario and in each: no text on another, on a line, on a symbol, or off the sheet. */
async function expectNoBlots(plan: Judgement): Promise<void> {
  const scenarios = plan.network?.network.scenarios.map((_, index) => index) ?? [];
  const shown = views.flatMap((view) => [undefined, ...scenarios].map((scenario) => ({ view, scenario })));
  for (const { view, scenario } of sampled("views and scenarios without overlaps", shown)) {
    const numbers = (record: number, role: string) => `W${record + 1}${role === "return" ? "N" : ""}`;
    const options = scenario === undefined ? { view } : { view, scenario, numbers };
    const pieces = piecesOf((await drawn(plan, options)).svg, measure);
    expect(pieces.texts.length).toBeGreaterThan(5);
    expect(blots(pieces), `${view}, scenario ${scenario}`).toEqual([]);
  }
}

describe("labels keep clear of each other, of lines and of symbols", () => {
  test.each([...examplePlans, ...correctNetworks])("%s", async (file) => {
    await expectNoBlots(await judgedFile(file));
  });

  test.each(sampled("generated drawings without overlaps", [20, 60, 200]))(
    "a network of %i circuits",
    async (circuits) => {
      // As many branches as the generator needs for that many circuits.
      await expectNoBlots(await judgedText(networkPlanText(circuits * 2.25 + 4)));
    },
    120_000,
  );

  test.each(sampled("generated drawings without overlaps", [200, 60, 20]))(
    "%i circuits that stand alone",
    async (circuits) => {
      await expectNoBlots(await judgedText(planText(circuits)));
    },
    120_000,
  );

  test.each([
    ["wide letters", "WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW"],
    ["ideograms", "冷蔵庫と換気扇とポンプ".repeat(6)],
    ["emoji", "🚐🔋💡".repeat(20)],
    ["accents", "Kühlbox für Ängstliche, Straße"],
    ["combining marks", "e\u0301\u0308\u0327".repeat(30)],
    ["one long word", "x".repeat(10_000)],
    ["nothing but spaces", "   "],
  ])("names of %s", async (_, name) => {
    await expectNoBlots(
      await judgedText(`import { battery, build, busBar, cable, circuit, part } from "loomwright";
const name = ${JSON.stringify(name)};
build({ name, voltage: 12 });
const bank = battery({ name, chemistry: "AGM", capacityAh: 100 });
const bus = busBar({ name });
const own = part({ name, terminals: ["one", "two", "a terminal with a long name of its own"] });
cable({ name, from: bank.positive, to: bus.stud, lengthM: 1, mm2: 16, protect: 100 });
cable({ name: "to own", from: bus.stud, to: own.one, lengthM: 1, mm2: 16 });
circuit({ name, from: bus.stud, returnTo: bank.negative, load: 5, oneWayM: 3, mm2: 4, protect: 10 });
circuit({ name, load: 500, oneWayM: 3, mm2: 1.5 });
`),
    );
  });
});

describe("the check sees what it is there for", () => {
  const sheet = (content: string) =>
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100">${content}</svg>`;
  const text = (x: number, y: number) => `<text x="${x}" y="${y}" font-size="10">mmm</text>`;
  test.each([
    ["two texts on one another", text(10, 50) + text(30, 55), 1],
    ["two texts beside each other", text(10, 50) + text(41, 50), 0],
    ["a line through a text", `${text(10, 50)}<path d="M0 48L90 48"/>`, 1],
    ["a slanting line through its corner", `${text(10, 50)}<path d="M0 56L14 40"/>`, 1],
    ["a line under a text", `${text(10, 50)}<path d="M0 53L90 53"/>`, 0],
    ["a line that ends before it", `${text(10, 50)}<path d="M0 48L9 48"/>`, 0],
    ["the edge of a box", `${text(10, 50)}<rect x="20" y="20" width="70" height="70"/>`, 1],
    ["a text within a box", `${text(10, 50)}<rect x="2" y="20" width="90" height="70"/>`, 0],
    ["a text off the sheet", text(90, 50), 1],
  ])("%s", (_, content, count) => {
    expect(blots(piecesOf(sheet(content), measure))).toHaveLength(count);
  });
});
