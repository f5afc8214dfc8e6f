import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import type { EnergyParams, EnergyView } from "../../../server/language/messages.ts";
import { type ScriptedEditor, startEditor } from "../../protocol/scripted-editor.ts";
import { sampled } from "../../setup/sampled.ts";
import { energyPlan } from "../harness/energy-plan.ts";
import { type EnergyPage, openEnergyPage } from "../harness/shipped-page.ts";
import { startBrowser } from "../harness/workbench.ts";

// The page of the view of energy as shipped, in a browser, with figures of the built server.

let browser: Browser;
let editor: ScriptedEditor;
const opened: EnergyPage[] = [];

beforeAll(async () => {
  browser = await startBrowser();
  editor = await startEditor({ files: { "hut.ts": energyPlan } });
  editor.open("hut.ts");
});
afterEach(async () => {
  for (const { page, forbidden, stopped } of opened.splice(0)) {
    await page.context().close();
    expect(forbidden).toEqual([]);
    expect(stopped).toEqual([]);
  }
});
afterAll(async () => {
  await browser.close();
  await editor.quit();
});

const ask = (params: Omit<EnergyParams, "textDocument"> = {}) =>
  editor.ask<EnergyView>("loomwright/energy", "hut.ts", params);

async function open(options: Parameters<typeof openEnergyPage>[1] = {}): Promise<EnergyPage> {
  const view = await openEnergyPage(browser, options);
  opened.push(view);
  await view.send({ type: "energy", number: 1, root: "file:///hut.ts", energy: await ask() });
  await view.page.locator("#chart svg").waitFor();
  return view;
}

const themes = {
  light: {
    "--vscode-editor-foreground": "#1f1f1f",
    "--vscode-editor-background": "#ffffff",
    "--vscode-editor-inactiveSelectionBackground": "#e5ebf1",
  },
  dark: {
    "--vscode-editor-foreground": "#d4d4d4",
    "--vscode-editor-background": "#1e1e1e",
    "--vscode-editor-inactiveSelectionBackground": "#3a3d41",
  },
  "high-contrast": {
    "--vscode-editor-foreground": "#ffffff",
    "--vscode-editor-background": "#000000",
    "--vscode-contrastBorder": "#6fc3df",
    "--vscode-contrastActiveBorder": "#f38518",
    "--vscode-editor-inactiveSelectionBackground": "#ffffffb3",
  },
};

describe("a person who hears the page or uses the keyboard alone", () => {
  const axe = createRequire(import.meta.url).resolve("axe-core/axe.min.js");

  test.each(sampled("appearances of a page", ["light", "dark", "high-contrast"] as const))(
    "axe-core finds nothing wrong in a %s theme",
    async (theme) => {
      const view = await open({ theme: { kind: `vscode-${theme}`, colours: themes[theme] } });
      const { page } = view;
      await page.getByText("The least single change that keeps up").click();
      await view.send({
        type: "energy",
        number: 2,
        root: "file:///hut.ts",
        energy: await ask({ least: true }),
      });
      // Evaluated by the driver, and so not subject to the page's policy.
      await page.evaluate(readFileSync(axe, "utf8"));
      const violations = await page.evaluate(async () => {
        const { axe } = globalThis as unknown as {
          axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
        };
        const found = await axe.run();
        return found.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).slice(0, 3)}`);
      });
      expect(violations).toEqual([]);
    },
  );

  test("arrow keys move a lever and show its effect, Enter writes it, Escape leaves it", async () => {
    const { page, said } = await open();
    const lever = page.getByRole("slider", { name: "house: capacity" });
    await lever.focus();
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("ArrowRight");
    expect(await said("move")).toMatchObject([{ value: 110 }, { value: 120 }]);
    expect(await page.locator(".lever output").first().textContent()).toBe("100 → 120 Ah");
    expect(await lever.getAttribute("aria-valuetext")).toBe("120 Ah");
    expect(await said("letGo")).toEqual([]);
    await page.keyboard.press("Escape");
    expect(await lever.inputValue()).toBe("100");
    expect(await said("leaveAsIs")).toHaveLength(1);
    expect(await said("leave")).toEqual([]);
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("Enter");
    expect(await said("letGo")).toMatchObject([{ number: 1, value: 110 }]);
  });

  test("a lever that is left by Tab without Enter writes nothing", async () => {
    const { page, said } = await open();
    await page.getByRole("slider", { name: "house: capacity" }).focus();
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("Tab");
    expect(await said("letGo")).toEqual([]);
    expect(await said("leaveAsIs")).toHaveLength(1);
  });

  test("undo and redo are keys and buttons; Escape goes to the text", async () => {
    const { page, said } = await open();
    await page.keyboard.press("Control+z");
    await page.getByRole("button", { name: "Undo" }).click();
    await page.keyboard.press("Control+Shift+z");
    await page.getByRole("button", { name: "Redo" }).click();
    expect([(await said("undo")).length, (await said("redo")).length]).toEqual([2, 2]);
    await page.keyboard.press("Escape");
    expect(await said("leave")).toHaveLength(1);
  });
});

test("the least single changes are asked for when they are opened, and are shown as a table", async () => {
  const view = await open();
  const { page, said } = view;
  const summary = page.getByText("The least single change that keeps up");
  expect(await said("least")).toEqual([]);
  await summary.focus();
  await page.keyboard.press("Enter");
  await page.getByText("Working it out…").waitFor();
  expect(await said("least")).toEqual([{ type: "least", wanted: true }]);
  await view.send({ type: "energy", number: 2, root: "file:///hut.ts", energy: await ask({ least: true }) });
  const rows = page.locator("#least-rows tbody tr");
  expect((await rows.allTextContents())[0]).toMatch(/^Bank100 Ah(not even )?[\d,]+ Ah/);
  await summary.press("Enter");
  expect(await said("least")).toHaveLength(2);
});

test("a word and a sign for each month; its worst week is chosen by its name, and the choice keeps the focus", async () => {
  const view = await open();
  const { page, said } = view;
  const rows = page.locator("#months tbody tr");
  expect(await rows.count()).toBe(12);
  for (const row of await rows.all())
    expect(await row.textContent()).toMatch(/[●◐○⊗] (keeps up|barely|runs short|short on)/);
  await page.getByRole("button", { name: "Jun", exact: true }).press("Enter");
  expect(await said("choose")).toEqual([{ type: "choose", period: "", bank: 0, month: 5 }]);
  await view.send({ type: "energy", number: 2, root: "file:///hut.ts", energy: await ask({ month: 5 }) });
  await page.getByRole("heading", { name: "all year: house, the worst week of Jun" }).waitFor();
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Jun");
});

test("a number that is computed cannot be moved, and says so; one that is missing says that it would be added", async () => {
  const { page } = await open();
  const rows = page.locator(".lever");
  expect(await rows.filter({ hasText: "shore power" }).locator("input:visible").count()).toBe(0);
  await rows.filter({ hasText: "shore power" }).getByText("Cannot be moved here: it is computed").waitFor();
  await rows
    .filter({ hasText: "roof: strings" })
    .getByText("not in the text yet, and would be added")
    .waitFor();
});

test("a pointer that lets go writes once, and a move shows the effect before it", async () => {
  const { page, said } = await open();
  const box = (await page.getByRole("slider", { name: "house: capacity" }).boundingBox())!;
  await page.mouse.move(box.x + box.width * 0.2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width * 0.6, box.y + box.height / 2, { steps: 4 });
  expect((await said("move")).length).toBeGreaterThan(1);
  expect(await said("letGo")).toEqual([]);
  await page.mouse.up();
  expect(await said("letGo")).toHaveLength(1);
});

test("in a narrow view nothing but the table is wider than the view", async () => {
  const { page } = await open({ viewport: { width: 420, height: 800 } });
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(420);
});

test("in forced colours the chart has the colours of the system", async () => {
  const { page } = await open({ forcedColors: "active" });
  const ink = await page.evaluate(() => {
    const text = document.querySelector<SVGTextElement>("#chart text")!;
    return [getComputedStyle(text).fill, getComputedStyle(document.body).color];
  });
  expect(ink[0]).toBe(ink[1]);
});

test("a chart with anything that ours never have is not shown", async () => {
  const view = await open();
  const energy = await ask({ month: 6 });
  const { week } = energy.shown!;
  const svg = week.svg.replace("</svg>", "<script>alert(1)</script></svg>");
  await view.send({
    type: "energy",
    number: 2,
    root: "file:///hut.ts",
    energy: { ...energy, shown: { ...energy.shown!, week: { ...week, svg } } },
  });
  await view.page.getByText("The chart was not shown").waitFor();
  expect(await view.said("refused")).toMatchObject([{ why: "an element <script>" }]);
});
