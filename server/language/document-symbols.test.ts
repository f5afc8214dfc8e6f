import { expect, test } from "vitest";
import { documentSymbols } from "./document-symbols.ts";
import { planUnderCursor } from "./feature-tester.ts";

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
