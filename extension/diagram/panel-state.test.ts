import { expect, test } from "vitest";
import { readPanelState } from "./panel-state.ts";

const kept = {
  uri: "file:///bus.ts",
  view: "wiring",
  scenario: "evening",
  colours: true,
  place: { x: 10, y: -20, scale: 1.5 },
};

test("what was kept comes back", () => {
  expect(readPanelState(kept)).toEqual(kept);
  expect(readPanelState(JSON.parse(JSON.stringify(kept)))).toEqual(kept);
});

test.each([undefined, null, 7, "bus.ts", [], {}])("%j is a panel as it is first opened", (damaged) => {
  expect(readPanelState(damaged)).toEqual({ uri: "", view: "one-line", scenario: "", colours: false });
});

test.each([
  { place: { x: 1, y: 1, scale: 0 } },
  { place: { x: 1, y: 1, scale: -1 } },
  { place: { x: Number.NaN, y: 1, scale: 1 } },
  { place: { x: "1", y: 1, scale: 1 } },
  { place: null },
  { view: "three-line" },
  { scenario: 4 },
  { colours: "yes" },
])("%j is left out, the rest stays", (damage) => {
  const { uri, ...rest } = readPanelState({ ...kept, ...damage });
  expect(uri).toBe(kept.uri);
  for (const name of Object.keys(damage)) {
    const usual = { view: "one-line", scenario: "", colours: false, place: undefined }[name];
    expect((rest as Record<string, unknown>)[name]).toEqual(usual);
  }
});
