import { expect, test } from "vitest";
import { documentSymbols } from "./document-symbols.ts";
import { planUnderCursor } from "./feature.tester.ts";
import { sampleBuild } from "./sample-build.tester.ts";

test("circuits with load, size and protection", async () => {
  const { view, uri, workspace } = await planUnderCursor(
    `circuit({ name: "winch", load: 40, oneWayFt: 15, gauge: 4, protect: 50 });
const light = circuit({ loadW: 30, oneWayM: 4, mm2: 2.5 });
circuit({ name: "pump", load: 80, oneWayFt: 9, gauge: "1/0", parallel: 2, protect: 125 });`,
  );
  const symbols = documentSymbols(view, uri);
  expect(symbols.map(({ name, detail }) => `${name}: ${detail}`)).toEqual([
    "winch: 40 A, 4 AWG, protected at 50 A",
    "light: 2.5 A, 2.5 mm², no protection",
    "pump: 80 A, 2 × 1/0 AWG, protected at 125 A",
  ]);
  const text = workspace.document(uri)?.getText(symbols[1]?.range);
  expect(text).toBe("circuit({ loadW: 30, oneWayM: 4, mm2: 2.5 })");
});

test("a circuit that is being typed in keeps its place", async () => {
  const one = `circuit({ name: "winch", load: 40, oneWayFt: 15, gauge: 4, protect: 50 });`;
  const { view, uri } = await planUnderCursor(one, { later: one.replace("gauge: 4", "gauge: ") });
  expect(documentSymbols(view, uri).map(({ name }) => name)).toEqual(["winch"]);
});

test("a network: parts, beneath each what begins at it, and the scenarios", async () => {
  const { view, uri, workspace } = await planUnderCursor(sampleBuild);
  const symbols = documentSymbols(view, uri);
  const drawn = symbols.flatMap(({ name, detail, children = [] }) => [
    `${name}: ${detail}`,
    ...children.map((child) => `  ${child.name}: ${child.detail}`),
  ]);
  expect(drawn).toEqual([
    "house bank: battery",
    expect.stringMatching(/^ {2}bank to switch: 68\.\d A, 2 AWG, protected at 100 A$/),
    "main switch: disconnect",
    "  feeder: 15 A, 4 AWG",
    expect.stringMatching(/^ {2}inverter supply: 5\d\.\d A, 2 AWG, no protection in it$/),
    "fuse panel: fuse panel",
    "  panel return: 15 A, 4 AWG",
    "  heater: 15 A, 10 AWG, protected at 20 A",
    "kettle inverter: inverter",
    "evening: scenario",
    "cooking: scenario",
  ]);
  const feeder = symbols[1]?.children?.[0];
  expect(workspace.document(uri)?.getText(feeder?.range)).toMatch(/^cable\(\{ name: "feeder".*\}\)$/);
});

test("a fuse or breaker that is a part: its rating, beneath it what begins at it", async () => {
  const { view, uri } = await planUnderCursor(`import { battery, circuit, fuseHolder } from "loomwright";
const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100 });
const main = fuseHolder({ name: "main", ratingA: 40, on: bank.positive });
circuit({ name: "pump", from: main.load, returnTo: bank.negative, load: 20, oneWayFt: 6, gauge: 8 });`);
  const [, symbol] = documentSymbols(view, uri);
  expect(symbol).toMatchObject({
    name: "main",
    detail: "fuse holder, 40 A",
    children: [{ name: "pump", detail: "20 A, 8 AWG, no protection in it" }],
  });
});

test("what was not solved says so, and no current is made up for it", async () => {
  const { view, uri } = await planUnderCursor(
    sampleBuild.replace("continuousW: 600", "continuousW: 9_000").replace(/scenario\(.*evening.*\n/, ""),
  );
  const symbols = documentSymbols(view, uri);
  expect(symbols.at(-1)).toMatchObject({ name: "cooking", detail: "scenario, not solved" });
  expect(symbols[1]?.children?.map(({ detail }) => detail)).toEqual(["4 AWG", "2 AWG, no protection in it"]);
});

test("a cable in another file than the part that it begins at stands there by itself", async () => {
  const { view, uri } = await planUnderCursor(
    `import { cable, load } from "loomwright";
import { bank } from "./bank.ts";
const lamp = load({ name: "lamp", currentA: 2 });
cable({ name: "out", from: bank.positive, to: lamp.positive, lengthFt: 3, gauge: 12, protect: 5 });
cable({ name: "back", from: lamp.negative, to: bank.negative, lengthFt: 3, gauge: 12 });`,
    {
      files: {
        "bank.ts": `import { battery } from "loomwright";
export const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 50 });`,
      },
    },
  );
  expect(documentSymbols(view, uri).map(({ name, children = [] }) => [name, children.length])).toEqual([
    ["lamp", 1],
    ["out", 0],
  ]);
  const elsewhere = documentSymbols(view, "file:///plans/bank.ts");
  expect(elsewhere.map(({ name, children = [] }) => [name, children.length])).toEqual([["bank", 0]]);
});
