import { expect, it } from "vitest";
import { judge } from "../../judge.ts";
import { runExample } from "../../rules/page.tester.ts";
import { ampacityOf } from "../ampacity.ts";

const plan = ({ build = "", lamp = "" } = {}) =>
  judge(
    runExample(`
build({ insulationC: 105${build} });
const board = surface({ name: "Board", size: { widthMm: 3000, heightMm: 800 } });
channel({ name: "Trunking", on: board, path: [{ leftMm: 0, topMm: 400 }, { leftMm: 3000, topMm: 400 }] });
const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 5, at: { on: board, leftMm: 100, topMm: 300 } });
const out = { from: house.positive, load: 6, gauge: 10, protect: 30 };
circuit({ ...out, name: "lamp", at: { on: board, leftMm: 2500, topMm: 300 }${lamp} });
circuit({ ...out, name: "fan", at: { on: board, leftMm: 2600, topMm: 300 } });
circuit({ ...out, name: "far", at: { on: board, leftMm: 2700, topMm: 300 } });`).records,
    [],
  );

const ampacities = (judged: ReturnType<typeof plan>) =>
  judged.circuits.map(({ circuit }) => {
    const ampacity = ampacityOf(circuit);
    return [circuit.name, circuit.bundledWith, ampacity.judged && Math.round(ampacity.ampacityA * 10) / 10];
  });

it("conductors that share a channel count as bundled only where the build asks for it", () => {
  // 60 A of 10 AWG at 105 °C (33 CFR 183.425, Table 5); six together 0.6 (note 2).
  expect(ampacities(plan())).toEqual([
    ["lamp", 1, 60],
    ["fan", 1, 60],
    ["far", 1, 60],
  ]);
  const asked = plan({ build: ", bundledInChannels: true" });
  expect(ampacities(asked)).toEqual([
    ["lamp", 5, 36],
    ["fan", 5, 36],
    ["far", 5, 36],
  ]);
  expect(asked.findings.filter(({ rule }) => rule === "placement/shared-channel")).toEqual([]);
});

it("a stated number stays", () => {
  const judged = plan({ build: ", bundledInChannels: true", lamp: ", bundledWith: 2" });
  expect(ampacities(judged)).toEqual([
    ["lamp", 2, 42],
    ["fan", 5, 36],
    ["far", 5, 36],
  ]);
});
