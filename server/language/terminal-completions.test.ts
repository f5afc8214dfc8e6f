import { describe, expect, test } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import { planUnderCursor } from "./feature.tester.ts";
import { sampleBuild } from "./sample-build.tester.ts";
import { terminalCompletions, typedTerminal } from "./terminal-completions.ts";

/** `label: what is there` of each choice at `‸`, in the order of the list. */
async function offered(typed: string, files: Readonly<Record<string, string>> = {}): Promise<string[]> {
  const whole = typed.includes("loomwright") ? "" : sampleBuild;
  const { uri, checker, text, position } = await planUnderCursor(whole || typed.split("cable(")[0]!, {
    later: whole + typed,
    files,
  });
  const document = TextDocument.create(uri, "typescript", 2, text);
  const terminal = typedTerminal(text, document.offsetAt(position));
  if (!terminal) return ["no terminal"];
  const items = await terminalCompletions({
    checker,
    root: uri,
    uri,
    text,
    typed: terminal,
    positionAt: (offset) => document.positionAt(offset),
  });
  expect(items.map(({ sortText }) => sortText)).toEqual(items.map(({ sortText }) => sortText).toSorted());
  return items.map(({ label, labelDetails }) => `${label}: ${labelDetails?.description}`);
}

describe("after from, to and returnTo", () => {
  test("a cable may start anywhere; the terminals with room come first", async () => {
    expect(await offered("cable({ from: ‸ });")).toMatchInlineSnapshot(`
      [
        "panel.branch: heater",
        "panel.negative: 2 conductors",
        "bank.positive: bank to switch",
        "bank.negative: 2 conductors",
        "off.line: bank to switch",
        "off.load: 2 conductors",
        "panel.feed: feeder",
        "kettle.positive: inverter supply",
        "kettle.negative: inverter supply",
      ]
    `);
  });

  test("it may end only where its start allows it", async () => {
    expect(await offered("cable({ from: panel.negative, to: ‸ });")).toMatchInlineSnapshot(`
      [
        "bank.negative: 2 conductors",
        "kettle.negative: inverter supply",
      ]
    `);
  });

  test("also while its brackets are still open, and below a circuit", async () => {
    expect(await offered("cable({ from: bank.positive, to: ‸")).toMatchInlineSnapshot(`
      [
        "panel.branch: heater",
        "off.line: bank to switch",
        "off.load: 2 conductors",
        "panel.feed: feeder",
        "kettle.positive: inverter supply",
      ]
    `);
  });

  test("a circuit starts at a positive terminal and returns to a negative one", async () => {
    expect(await offered("circuit({ load: 2, from: ‸ });")).toMatchInlineSnapshot(`
      [
        "panel.branch: heater",
        "bank.positive: bank to switch",
        "off.line: bank to switch",
        "off.load: 2 conductors",
        "panel.feed: feeder",
        "kettle.positive: inverter supply",
      ]
    `);
    expect(await offered("circuit({ load: 2, from: off.load, returnTo: ‸ });")).toMatchInlineSnapshot(`
      [
        "panel.negative: 2 conductors",
        "bank.negative: 2 conductors",
        "kettle.negative: inverter supply",
      ]
    `);
  });

  test("a circuit ends at a whole part", async () => {
    expect(await offered("circuit({ from: panel.branch, to: ‸ });")).toMatchInlineSnapshot(`
      [
        "bank: bank to switch",
        "panel: feeder",
        "kettle: inverter supply",
      ]
    `);
  });

  test("behind the dot, those of that part alone", async () => {
    expect(await offered("cable({ from: bank.positive, to: panel.‸ });")).toMatchInlineSnapshot(`
      [
        "branch: heater",
        "feed: feeder",
      ]
    `);
  });

  test("parts of other files are offered by their imported names, and parts further down are not", async () => {
    const power = `import { battery, busBar } from "loomwright";
export const house = battery({ chemistry: "AGM", capacityAh: 90 });
export const hidden = busBar({});
`;
    const van = `import { busBar, cable } from "loomwright";
import { house as bank } from "./power.ts";
const plus = busBar({ side: "positive" });
cable({ from: ‸ });
const late = busBar({});
`;
    expect(await offered(van, { "power.ts": power })).toEqual([
      "bank.positive: no conductor yet",
      "bank.negative: no conductor yet",
      "plus.stud: no conductor yet",
    ]);
  });

  test.each(["cable({ gauge: ‸ });", "const from = ‸1;", "scenario({ name: 'x', on: ‸ });"])(
    "none in %s",
    async (typed) => {
      expect(await offered(typed)).toEqual(["no terminal"]);
    },
  );
});
