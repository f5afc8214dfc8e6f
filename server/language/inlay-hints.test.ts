import { expect, test } from "vitest";
import { planUnderCursor } from "./feature.tester.ts";
import { inlayHints } from "./inlay-hints.ts";
import { sampleBuild } from "./sample-build.tester.ts";

const everywhere = { start: { line: 0, character: 0 }, end: { line: 1_000, character: 0 } };

async function drawn(text: string, within = everywhere, later?: string): Promise<string[]> {
  const { view, uri, workspace } = await planUnderCursor(text, later === undefined ? {} : { later });
  const document = workspace.document(uri)!;
  return inlayHints(view, uri, within).map(({ position, label }) => {
    const line = document.getText({ start: { line: position.line, character: 0 }, end: position });
    return `${line.match(/\S+$/)?.[0]} ‹${label}›`;
  });
}

const one = "circuit({ load: 40, oneWayFt: 15, gauge: 4, protect: 50 });";

test("drop and spare capacity beside the size", async () => {
  const [hint, ...others] = await drawn(one);
  expect(hint).toMatch(/^4 ‹drop [\d.]+ %, 85 A spare›$/);
  expect(others).toEqual([]);
});

test("too much current is named as such", async () => {
  const [hint] = await drawn(one.replace("gauge: 4", "gauge: 14"));
  // 33 CFR 183.425, Table 5: 14 AWG, 75 °C: 20 A.
  expect(hint).toMatch(/^14 ‹drop at least [\d.]+ %, 20 A too much›$/);
});

test("what the conductor may carry is not left out where it was not judged", async () => {
  const [hint] = await drawn(one.replace("load", "insulationC: 60, ambientC: 65, load"));
  expect(hint).toMatch(/^4 ‹drop at least [\d.]+ %, ampacity not judged›$/);
});

test("one size for several circuits shows the worst once", async () => {
  const hints = await drawn(
    "for (const load of [10, 40, 20]) circuit({ load, oneWayFt: 15, gauge: 4, protect: 50 });",
  );
  expect(hints).toHaveLength(1);
  expect(hints[0]).toMatch(/, 85 A spare›$/);
});

test("none where a value was refused that the figures depend on", async () => {
  expect(await drawn(one.replace("load", "insulation: 105, load"))).toEqual([]);
  expect(await drawn(one.replace("load", "ambientC: 999, load"))).toEqual([]);
  expect(await drawn(`${one}\nbuild({ voltage: "24" as any });`)).toEqual([]);
});

test("only in the stretch that is asked for", async () => {
  const text = `${one}\n${one}\n${one}`;
  const within = { start: { line: 2, character: 0 }, end: { line: 2, character: 80 } };
  expect(await drawn(text)).toHaveLength(3);
  expect(await drawn(text, within)).toHaveLength(1);
});

test("while half typed they move with the text, and go where it is touched", async () => {
  const text = `${one}\n${one}`;
  const later = `${one.replace("gauge: 4", "gauge: ")}\n${one}`;
  expect(await drawn(text, everywhere, later)).toHaveLength(1);
  expect(await drawn(text, everywhere, `\n\ncircuit({${text}`)).toHaveLength(2);
});

test("beside a cable's size the current and what is spare, beside a wired circuit's as beside any other", async () => {
  const hints = await drawn(sampleBuild);
  expect(hints).toEqual([
    expect.stringMatching(/^2 ‹carries 68\.\d A, 141 A spare›$/),
    // 33 CFR 183.425, Table 5: 4 AWG, 105 °C: 160 A; 10 AWG: 60 A.
    "4 ‹carries 15 A, 145 A spare›",
    "4 ‹carries 15 A, 145 A spare›",
    expect.stringMatching(/^10 ‹drop 3\.2\d %, 45 A spare›$/),
    expect.stringMatching(/^2 ‹drop 0\.4\d+ %, 15\d A spare›$/),
  ]);
});

test("the tooltip of a wired circuit tells the whole way, that of a cable has no limit of its own", async () => {
  const { view, uri } = await planUnderCursor(sampleBuild);
  const tooltips = inlayHints(view, uri, everywhere).map(({ tooltip }) => tooltip);
  expect(tooltips[1]).toBe("feeder: carries 15 A, may carry 160 A, loses 0.0158 V.");
  expect(tooltips[3]).toMatch(/; limit 10 %; 3\.6\d % on the whole path from the bank, limit 10 %\.$/);
});

test("one size for cables and circuits speaks of the worst drop and the least spare", async () => {
  const shared = sampleBuild
    .replace("const bank", "const size = 4;\nconst bank")
    .replace("lengthFt: 4, gauge: 4", "lengthFt: 4, gauge: size")
    .replace("gauge: 10", "gauge: size");
  const { view, uri } = await planUnderCursor(shared);
  const hint = inlayHints(view, uri, everywhere).find(({ label }) => String(label).includes("drop 0.79"));
  expect(hint?.label).toMatch(/^drop 0\.79\d* %, 145 A spare$/);
  expect(hint?.tooltip).toContain("heater: carries 15 A");
  expect(hint?.tooltip).toContain("This size also serves 1 other run");
});

test("where no scenario could be solved, the hint says that the current is not known", async () => {
  const tooMuch = sampleBuild
    .replace("continuousW: 600", "continuousW: 9_000")
    .replace(/scenario\(.*evening.*\n/, "");
  expect(await drawn(tooMuch)).toEqual(Array(5).fill(expect.stringMatching(/‹current not worked out›$/)));
});

test("none beside cables of a network that could not be read; nor of its circuits, whose current is only the least", async () => {
  const refused = sampleBuild.replace("capacityAh: 200", "capacityAh: -200");
  expect(await drawn(refused)).toEqual([]);
});
