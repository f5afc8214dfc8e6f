import { expect, test } from "vitest";
import { planUnderCursor } from "./feature-tester.ts";
import { inlayHints } from "./inlay-hints.ts";

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
