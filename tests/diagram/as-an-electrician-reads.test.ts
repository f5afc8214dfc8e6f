import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { textWidth } from "../../library/documents/diagram/text-measure.ts";
import { drawn, fileJudge } from "./drawn-plans.ts";
import { type DrawingFaults, faultsOf } from "./faults-of-drawing.ts";
import { blots, type Measure, piecesOf } from "./pieces-of-svg.ts";

/*
 * Wiring diagrams of networks that differ in kind, held against the faults that an electrician sees at a glance. IEC 61082-1 asks
 * for a flow from left to right and for few crossings (from memory). The number of crossings is a bound for each network:
 * it was counted on a drawing that was looked at, and only falls.
 */

const judgedFile = fileJudge();
const measure: Measure = (text, bold) => textWidth(text, 1, bold ? "bold" : "regular");

/** By network: the most crossings of two conductors. */
const networks: Readonly<Record<string, number>> = {
  "tests/diagram/networks/small-boat.ts": 4,
  "tests/diagram/networks/return-straight-to-the-battery.ts": 1,
  "tests/diagram/networks/panel-first.ts": 1,
  "tests/diagram/networks/hut-with-two-panels.ts": 0,
  "tests/diagram/networks/inverter-and-charger.ts": 1,
  "tests/diagram/networks/chassis-return.ts": 2,
  "tests/diagram/networks/big-van.ts": 8,
  "library/templates/van.ts": 1,
  "library/templates/boat.ts": 1,
  "library/templates/hut.ts": 1,
  "examples/library-bus/bus.ts": 7,
  "examples/rangers-hut/hut.ts": 2,
  "examples/river-launch/launch.ts": 7,
  "tests/builds/clean/two-bank-catamaran.ts": 15,
  "tests/builds/clean/mountain-hut-48v.ts": 1,
  "tests/builds/clean/golf-cart-48.ts": 1,
  "tests/builds/clean/selector-switch-launch.ts": 0,
  "tests/builds/clean/charging-relay-boat.ts": 0,
  "tests/builds/clean/van-with-booster.ts": 1,
  "tests/networks/correct/three-strings-on-a-roof.ts": 1,
  "tests/networks/correct/two-banks-on-a-selector.ts": 0,
};

const none = {
  barCrossings: [],
  sharedTracks: [],
  overlaps: [],
  againstFlow: [],
  detours: [],
  fedFromBehind: [],
} satisfies Partial<DrawingFaults>;

describe("flow from left to right, and no bar touches the other polarity", () => {
  test.each(Object.entries(networks))("%s", async (file, mostCrossings) => {
    const plan = await judgedFile(file);
    const drawing = await drawn(plan, { medium: "screen" });
    const { crossings, conductors, ...faults } = faultsOf(plan, drawing);
    expect(conductors).toBe(plan.network!.network.conductors.length);
    expect(faults).toEqual(none);
    expect(crossings).toBeLessThanOrEqual(mostCrossings);
    expect(blots(piecesOf(drawing.svg, measure))).toEqual([]);
  });

  test("every network in the folder is among them", () => {
    const folder = fileURLToPath(new URL("./networks/", import.meta.url));
    for (const name of readdirSync(folder))
      expect(networks).toHaveProperty([`tests/diagram/networks/${name}`]);
  });
});

describe("the check sees what it is there for", () => {
  const plan = () => judgedFile("tests/diagram/networks/return-straight-to-the-battery.ts");

  /** The drawing with something drawn over it. */
  async function faultsWith(change: (svg: string) => string): Promise<DrawingFaults> {
    const judgement = await plan();
    const drawing = await drawn(judgement, { medium: "screen" });
    return faultsOf(judgement, { ...drawing, svg: change(drawing.svg) });
  }

  test("a return that crosses the positive bar of the panel", async () => {
    // The bars of the panel change places.
    const faults = await faultsWith((svg) => {
      const panel = /<g class="loomwright-part[^>]*aria-label="panel"[\s\S]*?<\/g>/.exec(svg)![0];
      const [positive, negative] = [...panel.matchAll(/<path d="M([\d.]+) [^"]*" [^>]*stroke-width="3"/g)]
        .map(([, x]) => x!)
        .filter((x, index, all) => all.indexOf(x) === index) as [string, string];
      const swapped = panel
        .replaceAll(`${positive} `, "first ")
        .replaceAll(`cx="${positive}"`, 'cx="first"')
        .replaceAll(`${negative} `, `${positive} `)
        .replaceAll(`cx="${negative}"`, `cx="${positive}"`)
        .replaceAll("first ", `${negative} `)
        .replaceAll('cx="first"', `cx="${negative}"`);
      return svg.replace(panel, swapped);
    });
    expect(faults.barCrossings.length).toBeGreaterThan(0);
  });

  test("a picture in a mirror runs against the flow, and feeds its panel from behind", async () => {
    const judgement = await plan();
    const drawing = await drawn(judgement, { medium: "screen" });
    const faults = faultsOf(judgement, {
      ...drawing,
      svg: drawing.svg
        .replaceAll(/([ML])([\d.]+) /g, (_, letter, x) => `${letter}${drawing.widthPx - Number(x)} `)
        .replaceAll(/cx="([\d.]+)"/g, (_, x) => `cx="${drawing.widthPx - Number(x)}"`),
      elements: drawing.elements.map((one) => ({
        ...one,
        box: { ...one.box, x: drawing.widthPx - one.box.x - one.box.width },
      })),
    });
    expect(faults.againstFlow.length).toBeGreaterThan(8);
    expect(faults.fedFromBehind).toEqual(["panel return at panel", "panel feed at panel"]);
  });
});
