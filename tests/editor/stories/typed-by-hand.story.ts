import type { Frame, Page } from "playwright-core";
import { beforeAll, expect, test } from "vitest";
import { diagramIn } from "../harness/diagram-in-workbench.ts";
import { line, runFromPalette, statusItem } from "../harness/on-screen.ts";
import { useEditor } from "../harness/use-editor.ts";

// A builder types a whole circuit, key by key, with the diagram beside the text. Every frame that is drawn meanwhile is looked at.

const editor = useEditor({ trustEverything: true });
let page: Page;
let diagram: Frame;

/** One run with a finding, so that an underline, a hint and a mark in the diagram are there from the beginning. */
const plan = `import { battery, build, cable, circuit, fusePanel } from "loomwright";

build({ name: "hut", insulationC: 105 });
const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 60 });
const panel = fusePanel({ name: "fuse panel", positions: 6 });
cable({ name: "feeder", from: bank.positive, to: panel.feed, lengthFt: 4, gauge: 6, protect: 40 });
cable({ name: "panel return", from: panel.negative, to: bank.negative, lengthFt: 4, gauge: 6 });
circuit({
  name: "heater",
  from: panel.branch,
  load: 15, oneWayFt: 25,
  gauge: 14, protect: 20,
});

`;

/** In short lines: the editor does not draw underlines that a long line has scrolled out of the window. */
const byHand = `circuit({
name: "reading lamp",
from: panel.branch,
load: 2, oneWayFt: 8,
gauge: 16, protect: 5,
});`;

beforeAll(async () => {
  ({ page } = await editor.show({ "hut.ts": plan }, "hut.ts", { viewport: { width: 1800, height: 900 } }));
  await statusItem(page, "Loomwright: 1 circuit").waitFor();
  await runFromPalette(page, "Loomwright: Show the Wiring Diagram");
  const stage = diagramIn(page).locator("#stage svg");
  await stage.waitFor();
  diagram = (await (await stage.elementHandle())!.ownerFrame())!;
  await line(page, "A spare").waitFor();
});

test("no underline, hint, count or drawn part disappears between two keys", async () => {
  await line(page, "gauge: 14").click();
  await page.keyboard.press("Control+End");
  const before = await page.evaluate(seenInEditor);
  expect(before.warnings).toBeGreaterThan(0);
  expect(before.hints).toBeGreaterThan(0);
  await page.evaluate(watch, seenInEditor.toString());
  await diagram.evaluate(watch, seenInDiagram.toString());

  for (const key of byHand) {
    if (key === "\n") await page.keyboard.press("Enter");
    else await page.keyboard.type(key, { delay: 40 });
    // A list that opens by itself would take the next key that completes it, such as a dot or a bracket.
    if (key === ".") await page.keyboard.press("Escape");
  }
  await statusItem(page, "Loomwright: 2 circuits").waitFor();
  await diagramIn(page).locator("#stage text", { hasText: "reading lamp" }).first().waitFor();

  const inEditor = await page.evaluate(seen<EditorFrame>);
  const inDiagram = await diagram.evaluate(seen<DiagramFrame>);
  expect(inEditor.length).toBeGreaterThan(1);
  expect(Math.min(...inEditor.map(({ warnings }) => warnings))).toBeGreaterThanOrEqual(before.warnings);
  expect(Math.min(...inEditor.map(({ hints }) => hints))).toBeGreaterThanOrEqual(before.hints);
  expect(inEditor.map(({ status }) => status).filter((status) => !/\d circuit/.test(status))).toEqual([]);
  expect(inDiagram.filter(({ heater, marks }) => heater === 0 || marks === 0)).toEqual([]);
});

interface EditorFrame {
  readonly warnings: number;
  readonly hints: number;
  readonly status: string;
}

interface DiagramFrame {
  readonly heater: number;
  readonly marks: number;
}

/** The parts of the editor that a flicker would change. Runs in the workbench. */
function seenInEditor(): EditorFrame {
  return {
    warnings: document.querySelectorAll(".squiggly-warning").length,
    hints: [...document.querySelectorAll(".view-line span")].filter(
      ({ children, textContent }) => children.length === 0 && /A\sspare/.test(textContent ?? ""),
    ).length,
    status:
      [...document.querySelectorAll(".statusbar-item")]
        .map(({ textContent }) => textContent ?? "")
        .find((text) => text.includes("Loomwright")) ?? "",
  };
}

/** The drawn load and the marks of findings. Runs in the view with the diagram. */
function seenInDiagram(): DiagramFrame {
  return {
    heater: document.querySelectorAll('#stage g[data-element="part:heater"]').length,
    marks: document.querySelectorAll("#stage .loomwright-warning").length,
  };
}

/** Keeps each frame that differs from the one before. Runs in a page. */
function watch(look: string): void {
  const lookNow = new Function(`return (${look})()`) as () => unknown;
  const frames: unknown[] = [];
  Object.assign(window, { seenFrames: frames });
  const keep = () => {
    const now = lookNow();
    if (JSON.stringify(now) !== JSON.stringify(frames.at(-1))) frames.push(now);
    requestAnimationFrame(keep);
  };
  keep();
}

/** The frames kept by {@link watch}. */
function seen<One>(): One[] {
  return (window as unknown as { seenFrames: One[] }).seenFrames;
}
