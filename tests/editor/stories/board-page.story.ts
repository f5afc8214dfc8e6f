import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import type {
  ArrangementAnswer,
  BoardsParams,
  BoardsView,
  TriedPlace,
} from "../../../server/language/messages.ts";
import { type ScriptedEditor, startEditor } from "../../protocol/scripted-editor.ts";
import { sampled } from "../../setup/sampled.ts";
import { boardsPlan } from "../harness/boards-plan.ts";
import { type BoardsPage, openBoardsPage } from "../harness/shipped-page.ts";
import { startBrowser } from "../harness/workbench.ts";

// The page of the view of the boards as shipped, in a browser, with places of the built server.

let browser: Browser;
let editor: ScriptedEditor;
const opened: BoardsPage[] = [];

beforeAll(async () => {
  browser = await startBrowser();
  editor = await startEditor({ files: { "cabin.ts": boardsPlan } });
  editor.open("cabin.ts");
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

const ask = (params: Omit<BoardsParams, "textDocument"> = {}) =>
  editor.ask<BoardsView>("loomwright/boards", "cabin.ts", params);
const root = "file:///cabin.ts";

async function open(options: Parameters<typeof openBoardsPage>[1] = {}): Promise<BoardsPage> {
  const view = await openBoardsPage(browser, { viewport: { width: 1300, height: 900 }, ...options });
  opened.push(view);
  await view.send({ type: "boards", number: 1, root, boards: await ask() });
  await view.page.locator(".stage svg").first().waitFor();
  return view;
}

/** Answers the last move of the page, as the extension does. */
async function answer(view: BoardsPage): Promise<readonly TriedPlace[]> {
  await expect.poll(async () => (await view.said("move")).length).toBeGreaterThan(0);
  const { places } = (await view.said("move")).at(-1)!;
  const versions = Object.entries((await ask()).versions).map(([uri, version]) => ({ uri, version }));
  const boards = await ask({ tried: { versions, places } });
  await view.send({ type: "boards", number: 1, root, boards, moved: places });
  return places;
}

const part = ({ page }: BoardsPage, name: string) =>
  page.getByRole("button", { name: new RegExp(`^${name}, `) });

const themes = {
  light: { "--vscode-editor-foreground": "#1f1f1f", "--vscode-editor-background": "#ffffff" },
  dark: { "--vscode-editor-foreground": "#d4d4d4", "--vscode-editor-background": "#1e1e1e" },
  "high-contrast": {
    "--vscode-editor-foreground": "#ffffff",
    "--vscode-editor-background": "#000000",
    "--vscode-contrastBorder": "#6fc3df",
    "--vscode-contrastActiveBorder": "#f38518",
  },
};

const axe = createRequire(import.meta.url).resolve("axe-core/axe.min.js");

async function violationsOn({ page }: BoardsPage): Promise<readonly string[]> {
  // Evaluated by the driver, and so not subject to the page's policy.
  await page.evaluate(readFileSync(axe, "utf8"));
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
    };
    const found = await axe.run();
    return found.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).slice(0, 3)}`);
  });
}

describe("a person who hears the page or uses the keyboard alone", () => {
  test.each(sampled("appearances of a page", ["light", "dark", "high-contrast"] as const))(
    "axe-core finds nothing wrong in a %s theme",
    async (theme) => {
      const view = await open({ theme: { kind: `vscode-${theme}`, colours: themes[theme] } });
      expect(await violationsOn(view)).toEqual([]);
    },
  );

  test("each part has its place as its name", async () => {
    const view = await open();
    await view.page
      .getByRole("button", { name: /^plus, 600 mm from the left, 300 mm from the top, upright/ })
      .waitFor();
    expect(await part(view, "minus").getAttribute("aria-description")).toContain("it");
  });

  test("arrow keys move a part and show the effect, R turns it, Enter writes it, Escape leaves it", async () => {
    const view = await open();
    const { page, said } = view;
    await part(view, "plus").focus();
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("ArrowUp");
    // Two keys within a frame are one move.
    await expect
      .poll(async () => (await said("move")).at(-1)?.places)
      .toMatchObject([{ left: 605, top: 295, turnedDeg: 0 }]);
    await answer(view);
    await page.locator("#effect", { hasText: "plus: 605 mm from the left, 295 mm from the top" }).waitFor();
    await page.locator("#effect", { hasText: "0.864 → 0.875 m" }).waitFor();
    expect(await page.evaluate(() => document.activeElement?.getAttribute("aria-label"))).toMatch(
      /^plus, 605/,
    );
    await page.keyboard.press("Escape");
    expect(await said("leaveAsIs")).toHaveLength(1);
    expect(await said("leave")).toEqual([]);
    expect(await said("letGo")).toEqual([]);
    await page.keyboard.press("r");
    await page.keyboard.press("Enter");
    expect(await said("letGo")).toMatchObject([
      { number: 1, places: [{ left: 600, top: 300, turnedDeg: 90 }] },
    ]);
  });

  test("B puts a part on the next board, at a free place there, and it keeps the focus", async () => {
    const view = await open();
    const { page, said } = view;
    const side = (await ask()).surfaces[1]!.record;
    await part(view, "plus").focus();
    await page.keyboard.press("b");
    expect(await answer(view)).toMatchObject([{ on: side, left: 0, top: 0, turnedDeg: 0 }]);
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Enter");
    expect(await said("letGo")).toMatchObject([{ places: [{ on: side, left: 0, top: 5 }] }]);
    expect(await said("leaveAsIs")).toEqual([]);
    await part(view, "minus").focus();
  });

  test("the part that the keyboard is on stays selected, wherever the cursor of the text is", async () => {
    const view = await open();
    await part(view, "plus").focus();
    await view.page.getByRole("heading", { name: "plus", exact: true }).waitFor();
    const [house] = (await ask()).parts;
    for (const records of [[], [house!.record]]) await view.send({ type: "cursor", records });
    expect(await view.page.locator("#about-title").textContent()).toBe("plus");
    await view.page.getByRole("button", { name: "Undo" }).focus();
    await view.send({ type: "cursor", records: [house!.record] });
    await view.page.getByRole("heading", { name: "house", exact: true }).waitFor();
  });

  test("keys that are pressed before the text has followed move the part from its new place", async () => {
    const view = await open();
    const { page, said, send } = view;
    const before = await ask();
    await part(view, "plus").focus();
    for (const key of ["ArrowRight", "Enter", "ArrowRight", "ArrowDown", "Enter"])
      await page.keyboard.press(key);
    expect(await said("letGo")).toHaveLength(1);
    const versions = Object.fromEntries(Object.keys(before.versions).map((uri) => [uri, 99]));
    const parts = before.parts.map((one) =>
      one.name === "plus" ? { ...one, place: { ...one.place!, left: 605 } } : one,
    );
    await send({ type: "boards", number: 2, root, boards: { ...before, versions, parts } });
    await expect.poll(() => said("letGo")).toHaveLength(2);
    expect((await said("letGo"))[1]).toMatchObject({ number: 2, places: [{ left: 610, top: 305 }] });
  });

  test("a part that is left by Tab without Enter is not written", async () => {
    const view = await open();
    await part(view, "plus").focus();
    await view.page.keyboard.press("ArrowRight");
    await view.page.keyboard.press("Tab");
    expect(await view.said("letGo")).toEqual([]);
    expect(await view.said("leaveAsIs")).toHaveLength(1);
  });

  test("a part that hangs nowhere is put on a surface, at a free place", async () => {
    const view = await open();
    const { page, said } = view;
    await page.getByRole("button", { name: "Put on Main board: Fridge" }).press("Enter");
    const [place] = await answer(view);
    expect(place).toMatchObject({ left: 0, top: 0 });
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Enter");
    expect((await said("letGo"))[0]!.places).toMatchObject([{ left: 0, top: 5 }]);
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

describe("an arrangement", () => {
  /** Asks for it with the keyboard, and answers as the extension does. */
  async function suggested(view: BoardsPage) {
    const { page, said, send } = view;
    const button = page.getByRole("button", { name: "Suggest an arrangement on Main board" });
    await button.focus();
    await page.keyboard.press("Enter");
    const { on } = (await said("suggest")).at(-1)!;
    await send({ type: "searching", on, message: "Looking for places: search 1 of 5." });
    await page.locator("#said", { hasText: "search 1 of 5. Escape cancels." }).waitFor();
    const versions = Object.entries((await ask()).versions).map(([uri, version]) => ({ uri, version }));
    const answer = await editor.ask<ArrangementAnswer>("loomwright/arrangement", "cabin.ts", {
      versions,
      on,
    });
    if (answer.state === "none") throw new Error(answer.message);
    await send({ type: "arrangement", on, answer });
    await page.getByRole("heading", { name: "Suggested arrangement" }).waitFor();
    return answer;
  }
  const focused = ({ page }: BoardsPage) =>
    page.evaluate(
      () => document.activeElement?.getAttribute("aria-label") ?? document.activeElement?.textContent,
    );

  test("is shown dashed and in words, and Take writes all of its places", async () => {
    const view = await open({ theme: { kind: "vscode-light", colours: themes.light } });
    const { page, said } = view;
    const { places, facts } = await suggested(view);
    const fridge = page.getByRole("button", { name: /^Fridge, suggested place: \d/ });
    expect(await fridge.evaluate((handle) => getComputedStyle(handle).borderStyle)).toBe("dashed");
    expect(await fridge.textContent()).toBe("suggested");
    expect(await page.locator("#arrangement-facts p").allTextContents()).toEqual(facts);
    await page.getByRole("heading", { name: "Effects of the suggestion" }).waitFor();
    await page.locator("#effect", { hasText: "New: " }).waitFor();
    await page.getByText("With the parts at suggested places; the text is unchanged.").waitFor();
    expect(await focused(view)).toBe("Suggested arrangement");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    expect(await said("letGo")).toEqual([{ type: "letGo", number: 1, places }]);
    expect(await said("move")).toEqual([]);
    const boards = await ask();
    const versions = Object.fromEntries(Object.keys(boards.versions).map((uri) => [uri, 99]));
    await view.send({ type: "boards", number: 2, root, boards: { ...boards, versions } });
    await page.getByText("The suggested places are in the text, as one step").waitFor();
    expect(await page.locator("#arrangement").isVisible()).toBe(false);
    expect(await focused(view)).toBe("Suggest an arrangement on Main board");
  });

  test("is left by Escape or by its button, and the parts are where the text has them", async () => {
    const view = await open();
    const { page, said } = view;
    await suggested(view);
    await page.keyboard.press("Escape");
    await page.getByText("The suggestion was left; the text is unchanged.").waitFor();
    expect(await page.getByRole("button", { name: /^Fridge, / }).count()).toBe(0);
    expect([(await said("leave")).length, (await said("leaveAsIs")).length]).toEqual([0, 1]);
    await suggested(view);
    await page.getByRole("button", { name: "Leave", exact: true }).click();
    expect(await page.locator("#arrangement").isVisible()).toBe(false);
    expect(await said("letGo")).toEqual([]);
  });

  test("keeps the parts where they are until it is taken or left", async () => {
    const view = await open();
    const { page, said } = view;
    await suggested(view);
    await part(view, "plus").focus();
    await page.keyboard.press("ArrowRight");
    await page.getByText("Take the suggested arrangement or leave it; parts can then be moved.").waitFor();
    expect(await said("move")).toEqual([]);
  });

  test("has its pictures changed with the conductors, and is dropped when the text changes", async () => {
    const view = await open();
    const { page, said } = view;
    const { places } = await suggested(view);
    await view.send({ type: "boards", number: 2, root, boards: await ask({ conductors: true }) });
    await expect.poll(async () => (await said("move")).at(-1)?.places).toEqual(places);
    await page.getByRole("button", { name: /^Fridge, suggested place/ }).waitFor();
    const boards = await ask();
    const versions = Object.fromEntries(Object.keys(boards.versions).map((uri) => [uri, 99]));
    await view.send({ type: "boards", number: 3, root, boards: { ...boards, versions } });
    await page.getByText("The text changed: the suggestion was dropped.").waitFor();
    expect(await page.getByRole("button", { name: /^Fridge, / }).count()).toBe(0);
  });

  test("that is being looked for is cancelled by Escape or the button, and a reason is shown", async () => {
    const view = await open();
    const { page, said, send } = view;
    await page.getByRole("button", { name: "Suggest an arrangement on Side wall" }).click();
    const { on } = (await said("suggest"))[0]!;
    await send({ type: "searching", on, message: "Looking for places." });
    await page.keyboard.press("Escape");
    await page.getByRole("button", { name: "Cancel", exact: true }).click();
    expect(await said("cancel")).toHaveLength(2);
    const message = "The search for places was cancelled; the text is unchanged.";
    await send({ type: "arrangement", on, answer: { state: "none", message } });
    await page.getByText(message).waitFor();
    expect(await focused(view)).toBe("Suggest an arrangement on Side wall");
  });

  test("has no violation that axe-core finds", async () => {
    const view = await open();
    await suggested(view);
    expect(await violationsOn(view)).toEqual([]);
  });
});

describe("a pointer", () => {
  test("that drags a part writes once, at a place that snaps", async () => {
    const view = await open();
    const { page, said } = view;
    const box = (await part(view, "plus").boundingBox())!;
    const mm = box.width / 120;
    await page.mouse.move(box.x + 5, box.y + 5);
    await page.mouse.down();
    await page.mouse.move(box.x + 5 - 201 * mm, box.y + 5 - 98 * mm, { steps: 5 });
    const [place] = await answer(view);
    expect([place!.left % 5, place!.top % 5]).toEqual([0, 0]);
    expect(Math.abs(place!.left - 400)).toBeLessThanOrEqual(15);
    expect(await said("letGo")).toEqual([]);
    await page.mouse.up();
    expect(await said("letGo")).toMatchObject([{ places: [{ record: place!.record }] }]);
  });

  test("moves a part to another surface, and Escape puts it back", async () => {
    const view = await open();
    const { page, said } = view;
    const [box, other] = [
      (await part(view, "plus").boundingBox())!,
      (await page.locator(".stage").nth(1).boundingBox())!,
    ];
    await page.mouse.move(box.x + 5, box.y + 5);
    await page.mouse.down();
    await page.mouse.move(other.x + 100, other.y + 30, { steps: 5 });
    const [place] = await answer(view);
    expect(place!.on).toBe((await ask()).surfaces[1]!.record);
    await page.keyboard.press("Escape");
    await page.mouse.up();
    expect(await said("letGo")).toEqual([]);
    expect((await part(view, "plus").boundingBox())!).toEqual(box);
  });

  test("that clicks goes to the line of the part", async () => {
    const view = await open();
    await part(view, "house").click();
    const { record } = (await ask()).parts[0]!;
    expect(await view.said("goTo")).toEqual([{ type: "goTo", record, take: false }]);
  });
});

test("a part with a computed place cannot be dragged, and says why", async () => {
  const view = await open();
  const { page, said } = view;
  const box = (await part(view, "minus").boundingBox())!;
  await page.mouse.move(box.x + 5, box.y + 5);
  await page.mouse.down();
  await page.mouse.move(box.x + 60, box.y + 60, { steps: 4 });
  await page.mouse.up();
  await page.locator("#said", { hasText: "its distance from the left is computed" }).waitFor();
  expect([...(await said("move")), ...(await said("letGo"))]).toEqual([]);
});

test("the cursor in the text selects its part, and conductors are drawn on request", async () => {
  const view = await open();
  const { page, said } = view;
  const boards = await ask();
  await view.send({ type: "cursor", records: [boards.parts[1]!.record] });
  await page.getByRole("heading", { name: "plus", exact: true }).waitFor();
  await page.getByRole("checkbox", { name: "Conductors" }).check();
  expect(await said("choose")).toEqual([{ type: "choose", conductors: true }]);
  expect((await ask({ conductors: true })).surfaces[0]!.picture.svg).not.toBe(
    boards.surfaces[0]!.picture.svg,
  );
});

test("the choice of conductors is kept, and made again after a reload", async () => {
  const view = await open();
  await view.page.getByRole("checkbox", { name: "Conductors" }).check();
  const kept = await view.kept();
  expect(kept).toEqual({ uri: root, conductors: true, size: "fit" });
  const again = await open({ state: kept! });
  expect(await again.page.getByRole("checkbox", { name: "Conductors" }).isChecked()).toBe(true);
  expect(await again.said("choose")).toEqual([{ type: "choose", conductors: true }]);
});

test("a size of the pictures is chosen and kept, and a part follows the pointer there", async () => {
  const view = await open();
  await view.page.getByRole("combobox", { name: "Size" }).selectOption("200 %");
  const again = await open({ state: (await view.kept())! });
  const { page, said } = again;
  const { picture } = (await ask()).surfaces[0]!;
  const widthOf = (selector: string) =>
    page
      .locator(selector)
      .first()
      .evaluate((element) => element.getBoundingClientRect().width);
  expect(await widthOf(".stage")).toBeCloseTo(2 * picture.width, 0);
  // The boards scroll, and the page does not.
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  const before = (await ask()).parts.find(({ name }) => name === "plus")!.place!;
  await part(again, "plus").scrollIntoViewIfNeeded();
  const box = (await part(again, "plus").boundingBox())!;
  await page.mouse.move(box.x + 5, box.y + 5);
  await page.mouse.down();
  await page.mouse.move(box.x + 5 - 2 * picture.perMm * 100, box.y + 5, { steps: 4 });
  await page.mouse.up();
  const [last] = (await said("letGo")).at(-1)!.places;
  expect(last!.left).toBe(before.left - 100);
});

test("an answer about another text is not shown while a part moves, and a new text ends the move", async () => {
  const view = await open();
  const { page } = view;
  await part(view, "plus").focus();
  await page.keyboard.press("ArrowRight");
  const boards = await ask();
  const versions = Object.fromEntries(Object.keys(boards.versions).map((uri) => [uri, 99]));
  const moved = [
    {
      record: boards.parts[1]!.record,
      on: boards.surfaces[0]!.record,
      left: 9,
      top: 9,
      turnedDeg: 0 as const,
    },
  ];
  await view.send({
    type: "boards",
    number: 1,
    root,
    boards: { ...boards, versions, title: "other" },
    moved,
  });
  expect(await page.locator("#title").textContent()).toBe("Boards: cabin");
  await view.send({ type: "boards", number: 2, root, boards: { ...boards, versions } });
  await page.getByText("The text changed: the part is where the text has it.").waitFor();
});

test("a picture with anything that ours never have is not shown", async () => {
  const view = await open();
  const boards = await ask({ conductors: true });
  const [first, ...others] = boards.surfaces;
  const svg = first!.picture.svg.replace("</svg>", "<script>alert(1)</script></svg>");
  const surfaces = [{ ...first!, picture: { ...first!.picture, svg } }, ...others];
  await view.send({ type: "boards", number: 2, root, boards: { ...boards, surfaces } });
  await view.page.getByText("A picture was not shown").waitFor();
  expect(await view.said("refused")).toMatchObject([{ why: "an element <script>" }]);
});

test("in forced colours the drawn boards have the colours of the system", async () => {
  const { page } = await open({ forcedColors: "active" });
  const system = await page.evaluate(() => getComputedStyle(document.body).color);
  const inks = await page
    .locator(".stage text")
    .evaluateAll((texts) => [...new Set(texts.map((text) => getComputedStyle(text).fill))]);
  expect(inks).toEqual([system]);
});

test("in a narrow view no element is wider than the view", async () => {
  const { page } = await open({ viewport: { width: 420, height: 800 } });
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(420);
});
