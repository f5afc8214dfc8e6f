import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { attributeIs, elementIs } from "../../../extension/diagram/allowed-svg.ts";
import type { ShowDiagram } from "../../../extension/diagram/messages.ts";
import { sampled } from "../../setup/sampled.ts";
import { type DrawnPlan, drawnPlan } from "../harness/drawn-plan.ts";
import { hostileNames } from "../harness/hostile-names.ts";
import { type DiagramPage, openDiagramPage, show } from "../harness/shipped-page.ts";
import { startBrowser } from "../harness/workbench.ts";

// The page of the diagram's panel as shipped, in a browser, with diagrams drawn by the built server.

let browser: Browser;
let bus: DrawnPlan;
let workshop: DrawnPlan;
const opened: DiagramPage[] = [];

beforeAll(async () => {
  browser = await startBrowser();
  bus = await drawnPlan(example("library-bus"), "bus.ts");
  workshop = await drawnPlan(example("faulty-workshop"), "workshop.ts");
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
  for (const plan of [bus, workshop]) await plan.editor.quit();
});

async function open(options: Parameters<typeof openDiagramPage>[1] = {}): Promise<DiagramPage> {
  const panel = await openDiagramPage(browser, options);
  opened.push(panel);
  return panel;
}

function example(name: string): Record<string, string> {
  const folder = new URL(`../../../examples/${name}/`, import.meta.url);
  const files = readdirSync(folder).filter((file) => file.endsWith(".ts"));
  return Object.fromEntries(files.map((file) => [file, readFileSync(new URL(file, folder), "utf8")]));
}

const viewBoxOf = (page: Page) =>
  page
    .locator("#stage svg")
    .getAttribute("viewBox")
    .then((box) => (box ?? "").split(" ").map(Number) as [number, number, number, number]);
const element = (page: Page, id: string) => page.locator(`#stage g[data-element=${JSON.stringify(id)}]`);
const focusedId = (page: Page) =>
  page.evaluate(() => (document.activeElement as SVGElement | null)?.dataset.element);
/** The position of an element's group on the screen. */
const onScreen = async (page: Page, id: string) => {
  const box = await element(page, id).locator("> .frame, > .halo").first().boundingBox();
  if (!box) throw new Error(`${id} is not drawn`);
  return box;
};
const named = (diagram: ShowDiagram, name: string) => {
  const found = diagram.picture?.elements.find((one) => one.name === name);
  if (!found) throw new Error(`no element is called ${name}`);
  return found;
};

/** The drawings and views that this run looks at. */
const drawings = sampled("views of the diagram's page", [
  { plan: "library-bus", view: "one-line" },
  { plan: "library-bus", view: "wiring" },
  { plan: "faulty-workshop", view: "wiring" },
] as const);
const views = sampled("views of the diagram's page", ["one-line", "wiring"] as const);

describe("what a screen reader is told", () => {
  const axe = createRequire(import.meta.url).resolve("axe-core/axe.min.js");

  test.each(drawings)("axe-core finds nothing wrong with the $view view of $plan", async ({ plan, view }) => {
    const panel = await open();
    const diagram = await (plan === "library-bus" ? bus : workshop).diagram({ view });
    await show(panel, diagram);
    await element(panel.page, diagram.picture!.elements[0]!.id).focus();
    // Evaluated by the driver, and so not subject to the page's policy.
    await panel.page.evaluate(readFileSync(axe, "utf8"));
    const violations = await panel.page.evaluate(async () => {
      const { axe } = globalThis as unknown as {
        axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
      };
      const found = await axe.run();
      return found.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).slice(0, 3)}`);
    });
    expect(violations).toEqual([]);
  });

  test("every element is a button with its name, its description and its findings, in reading order", async () => {
    const panel = await open();
    const diagram = await workshop.diagram({ view: "wiring" });
    await show(panel, diagram);
    // The data that the browser itself gives to a screen reader.
    const session = await panel.page.context().newCDPSession(panel.page);
    const { nodes } = await session.send("Accessibility.getFullAXTree");
    const spoken = nodes
      .filter(({ ignored, role }) => !ignored && role?.value === "button")
      .map(({ name, description }) => ({ name: name?.value, description: description?.value }));
    const elements = diagram.picture!.elements;
    const first = spoken.findIndex(({ name }) => name === elements[0]!.name);
    expect(spoken.slice(first, first + elements.length)).toEqual(
      elements.map(({ name, description, findings }) => ({
        name,
        description: [description, ...findings.filter((finding) => !description.includes(finding))].join(" "),
      })),
    );
    expect(elements.flatMap(({ findings }) => findings).length).toBeGreaterThan(5);
  });

  test("the details of what is chosen stand in a strip that is read out, with what was found", async () => {
    const panel = await open();
    const diagram = await workshop.diagram({ view: "wiring" });
    await show(panel, diagram);
    const faulty = diagram.picture!.elements.find(({ severity }) => severity === "error");
    await element(panel.page, faulty!.id).focus();
    const strip = panel.page.locator("#details[aria-live=polite]");
    await strip.getByRole("heading", { name: faulty!.name }).waitFor();
    await strip.getByText("Error", { exact: true }).waitFor();
    for (const finding of faulty!.findings) await strip.getByText(finding, { exact: true }).waitFor();
    expect(faulty!.findings.length).toBeGreaterThan(0);
  });
});

describe("as it opens", () => {
  test.each(drawings)(
    "$plan, $view: words of at least 9 px, beginning at the bank, and no legend",
    async ({ plan, view }) => {
      const panel = await open();
      const { page } = panel;
      const diagram = await (plan === "library-bus" ? bus : workshop).diagram({ view });
      await show(panel, diagram);
      const words = await page.evaluate(() =>
        [...document.querySelectorAll<SVGTextElement>("#stage text")].flatMap((text) => {
          const scale = text.getScreenCTM()?.a ?? 0;
          const letters = (text.textContent ?? "").trim();
          return letters.length > 1 ? [{ letters, px: Number(text.getAttribute("font-size")) * scale }] : [];
        }),
      );
      expect(words.length).toBeGreaterThan(20);
      expect(words.filter(({ px }) => px < 8.999)).toEqual([]);
      if (process.env.PICTURES)
        await page.screenshot({ path: `${process.env.PICTURES}/${plan}-${view}.png` });
      expect(words.map(({ letters }) => letters).join("\n")).not.toContain("Local codes rule");
      // The workshop's circuits are lone ones, without a battery.
      if (plan === "faulty-workshop") return;
      const stage = (await page.locator("#stage").boundingBox())!;
      const bank = await onScreen(page, diagram.picture!.start!);
      expect(
        diagram.picture!.elements.find(({ id }) => id === diagram.picture!.start)!.description,
      ).toContain("attery");
      expect(bank.x).toBeGreaterThanOrEqual(stage.x);
      expect(bank.x + bank.width).toBeLessThanOrEqual(stage.x + stage.width);
      expect(bank.y).toBeGreaterThanOrEqual(stage.y);
      expect(bank.y + bank.height).toBeLessThanOrEqual(stage.y + stage.height);
    },
  );

  test("all of it in the window, once that is chosen, stays so over a reload", async () => {
    const panel = await open();
    const diagram = await bus.diagram({ view: "wiring" });
    await show(panel, diagram);
    await panel.page.locator("#whole").click();
    const box = await viewBoxOf(panel.page);
    const again = await open({ state: (await panel.kept())! });
    await show(again, diagram);
    expect(await viewBoxOf(again.page)).toEqual(box);
  });
});

describe("the search", () => {
  test("brings the first element with the words into sight, says how many there are, and leads to it", async () => {
    const panel = await open({ reducedMotion: "reduce" });
    const { page } = panel;
    const diagram = await bus.diagram({ view: "wiring" });
    await show(panel, diagram);
    const wanted = named(diagram, "window seats");
    await page.locator("#search").fill("WINDOW seats");
    await page.locator("#found", { hasText: /^\d+ found$/ }).waitFor();
    await page.locator("#details").getByRole("heading", { name: "window seats" }).waitFor();
    const stage = (await page.locator("#stage").boundingBox())!;
    await expect.poll(async () => (await onScreen(page, wanted.id)).x).toBeLessThan(stage.x + stage.width);
    await page.keyboard.press("Enter");
    expect(await page.evaluate(() => document.activeElement?.querySelector("title")?.textContent)).toBe(
      "window seats",
    );
    await page.locator("#search").fill("no such thing");
    await page.locator("#found", { hasText: "none" }).waitFor();
    await page.locator("#search").press("Escape");
    expect(await panel.said("leave")).toEqual([]);
  });
});

describe("the export", () => {
  test("is asked of the editor", async () => {
    const panel = await open();
    const diagram = await bus.diagram({ view: "wiring" });
    await show(panel, diagram);
    await panel.page.getByRole("button", { name: "Export…" }).click();
    expect(await panel.said("export")).toEqual([{ type: "export", number: diagram.number }]);
  });
});

describe("the details", () => {
  test("give feed, fuse, drop and margin of a circuit", async () => {
    const panel = await open();
    const { page } = panel;
    const diagram = await bus.diagram({ view: "wiring" });
    await show(panel, diagram);
    await element(page, named(diagram, "refrigerator").id).focus();
    const facts = page.locator("#details dl");
    await facts.waitFor();
    expect(await facts.locator("dt").allTextContents()).toEqual(["Feed", "Fuse", "Drop", "Margin"]);
    const [feed, fuse, drop, margin] = await facts.locator("dd").allTextContents();
    expect(feed).toContain("fuse panel");
    expect(fuse).toContain("10 A");
    expect(drop).toMatch(/^[\d.]+ % from the bank, limit [\d.]+ %$/);
    expect(margin).toMatch(/^[\d.]+ A spare: 6 A flow, the conductor may carry [\d.]+ A$/);
  });
});

describe("by keyboard alone", () => {
  test("from the toolbar into the picture, from part to part, to a line, and back to the text", async () => {
    const panel = await open();
    const { page } = panel;
    const diagram = await bus.diagram({ view: "wiring" });
    const elements = diagram.picture!.elements;
    await show(panel, diagram);
    const stops: (string | undefined)[] = [];
    for (let tabs = 0; tabs < 10; tabs++) {
      await page.keyboard.press("Tab");
      stops.push(await page.evaluate(() => document.activeElement?.id));
    }
    expect(stops).toEqual([
      ...["view", "scenario", "colours", "search", "smaller", "larger", "whole", "export", "stage", ""],
    ]);
    expect(await focusedId(page)).toBe(elements[0]!.id);
    await page.keyboard.press("Tab");
    expect(await focusedId(page)).toBe(elements[1]!.id);
    await page.keyboard.press("ArrowRight");
    expect(await focusedId(page)).toBe(elements[2]!.id);
    await page.keyboard.press("ArrowUp");
    await page.keyboard.press("Shift+Tab");
    expect(await focusedId(page)).toBe(elements[0]!.id);
    await page.keyboard.press("End");
    expect(await focusedId(page)).toBe(elements.at(-1)!.id);
    await page.keyboard.press("Tab");
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Go to its line");
    await page.keyboard.press("Shift+Tab");
    await page.keyboard.press("Enter");
    expect(await panel.said("goTo")).toEqual([
      { type: "goTo", number: diagram.number, element: elements.at(-1)!.id, take: true },
    ]);
    await page.keyboard.press("Escape");
    expect(await panel.said("leave")).toEqual([{ type: "leave", number: diagram.number }]);
  });

  test("arrows move the picture, plus and minus change its size, 0 shows all of it", async () => {
    const panel = await open();
    await show(panel, await bus.diagram({ view: "wiring" }));
    await panel.page.locator("#stage").focus();
    await panel.page.keyboard.press("0");
    const [x, y, width, height] = await viewBoxOf(panel.page);
    await panel.page.keyboard.press("+");
    const larger = await viewBoxOf(panel.page);
    expect(larger[2]).toBeLessThan(width);
    await panel.page.keyboard.press("ArrowRight");
    await panel.page.keyboard.press("ArrowDown");
    const moved = await viewBoxOf(panel.page);
    expect(moved[0]).toBeGreaterThan(larger[0]);
    expect(moved[1]).toBeGreaterThan(larger[1]);
    await panel.page.keyboard.press("-");
    expect((await viewBoxOf(panel.page))[2]).toBeCloseTo(width, 3);
    await panel.page.keyboard.press("0");
    expect(await viewBoxOf(panel.page)).toEqual([x, y, width, height]);
  });

  test.each(views)("in the %s view every element can be reached, and is then in sight", async (view) => {
    const panel = await open({ reducedMotion: "reduce" });
    const diagram = await bus.diagram({ view });
    const elements = diagram.picture!.elements;
    await show(panel, diagram);
    await panel.page.locator("#stage").focus();
    for (let times = 0; times < 8; times++) await panel.page.keyboard.press("+");
    const stage = await panel.page.locator("#stage").boundingBox();
    const reached: (string | undefined)[] = [];
    for (const _ of elements) {
      await panel.page.keyboard.press("Tab");
      const id = await focusedId(panel.page);
      reached.push(id);
      const box = await onScreen(panel.page, id!);
      expect(box.x).toBeLessThan(stage!.x + stage!.width);
      expect(box.x + box.width).toBeGreaterThan(stage!.x);
      expect(box.y).toBeLessThan(stage!.y + stage!.height);
      expect(box.y + box.height).toBeGreaterThan(stage!.y);
    }
    expect(reached).toEqual(elements.map(({ id }) => id));
  });
});

describe("by pointer", () => {
  test("a click chooses and goes to the line, a double one takes the cursor there, a drag does neither", async () => {
    const panel = await open();
    const { page } = panel;
    const diagram = await bus.diagram({ view: "wiring" });
    await show(panel, diagram);
    await page.locator("#whole").click();
    const fridge = named(diagram, "refrigerator");
    const { x, y, width, height } = await onScreen(page, fridge.id);
    const middle = [x + width / 2, y + height / 2] as const;
    const before = await viewBoxOf(page);
    await page.mouse.move(...middle);
    await page.mouse.down();
    await page.mouse.move(middle[0] + 40, middle[1] + 30, { steps: 4 });
    await page.mouse.up();
    expect(await panel.said("goTo")).toEqual([]);
    const after = await viewBoxOf(page);
    const scale = 900 / before[2];
    expect(after[0] - before[0]).toBeCloseTo(-40 / scale, 0);
    expect(after[1] - before[1]).toBeCloseTo(-30 / scale, 0);

    await page.mouse.click(middle[0] + 40, middle[1] + 30);
    const to = { type: "goTo", number: diagram.number, element: fridge.id };
    expect(await panel.said("goTo")).toEqual([{ ...to, take: false }]);
    await page.locator("#details").getByRole("heading", { name: "refrigerator" }).waitFor();
    await page.mouse.dblclick(middle[0] + 40, middle[1] + 30);
    expect((await panel.said("goTo")).at(-1)).toEqual({ ...to, take: true });
  });

  test("the wheel pushes the picture, and with Control changes its size about the pointer", async () => {
    const panel = await open();
    const { page } = panel;
    const diagram = await bus.diagram({ view: "wiring" });
    await show(panel, diagram);
    await page.locator("#whole").click();
    const { id } = named(diagram, "positive bus");
    const before = await onScreen(page, id);
    const at = { x: before.x + before.width / 2, y: before.y + before.height / 2 };
    await page.mouse.move(at.x, at.y);
    await page.keyboard.down("Control");
    await page.mouse.wheel(0, -200);
    await page.keyboard.up("Control");
    await expect.poll(async () => (await onScreen(page, id)).width).toBeGreaterThan(before.width * 1.2);
    const after = await onScreen(page, id);
    expect(after.x + after.width / 2).toBeCloseTo(at.x, 0);
    expect(after.y + after.height / 2).toBeCloseTo(at.y, 0);
    await page.mouse.wheel(30, 50);
    await expect.poll(async () => (await onScreen(page, id)).y - after.y).toBeCloseTo(-50, -1);
  });
});

describe("while the plan is edited", () => {
  test("the picture is replaced in one step, at the same size, and what was looked at stays where it was", async () => {
    const plan = await drawnPlan(example("library-bus"), "bus.ts");
    try {
      const panel = await open({ reducedMotion: "reduce" });
      const { page } = panel;
      const first = await plan.diagram({ view: "wiring" });
      await show(panel, first);
      await page.locator("#stage").focus();
      for (let times = 0; times < 4; times++) await page.keyboard.press("+");
      const { id } = named(first, "refrigerator");
      await element(page, id).focus();
      const [before, [, , width]] = [await onScreen(page, id), await viewBoxOf(page)];
      await page.evaluate(() => {
        const all = globalThis as unknown as { seen: number[] };
        all.seen = [];
        const stage = document.querySelector("#stage")!;
        new MutationObserver(() => all.seen.push(stage.childElementCount)).observe(stage, {
          childList: true,
        });
      });
      plan.editor.type(
        "bus.ts",
        "// Kitchenette.",
        'circuit({ ...fromPanel, name: "bread oven", load: 9, oneWayFt: 20, gauge: 10, protect: 15 });',
      );
      const second = await plan.diagram({ view: "wiring" });
      expect(second.picture!.svg).not.toBe(first.picture!.svg);
      await show(panel, second);
      await element(page, named(second, "bread oven").id).waitFor();
      // One change, without a moment of no picture or two pictures.
      expect(await page.evaluate(() => (globalThis as unknown as { seen: number[] }).seen)).toEqual([1]);
      const after = await onScreen(page, id);
      expect((await viewBoxOf(page))[2]).toBe(width);
      expect(after.x).toBeCloseTo(before.x, 0);
      expect(after.y).toBeCloseTo(before.y, 0);
      expect(await focusedId(page)).toBe(id);

      // The same picture again: the page is unchanged.
      await panel.send({ ...second, number: 99 });
      await expect
        .poll(async () => {
          await page.keyboard.press("Enter");
          return (await panel.said("goTo")).at(-1)?.number;
        })
        .toBe(99);
      expect(await page.evaluate(() => (globalThis as unknown as { seen: number[] }).seen)).toEqual([1]);
    } finally {
      await plan.editor.quit();
    }
  });

  test("as of the last complete text: said over the picture, and nothing moves", async () => {
    const panel = await open();
    const { page } = panel;
    const diagram = await bus.diagram({ view: "wiring" });
    await show(panel, diagram);
    const stage = await page.locator("#stage").boundingBox();
    await panel.send({ ...diagram, number: 50, current: false });
    await page.locator("#notice", { hasText: "As of the last complete text." }).waitFor();
    expect(await page.locator("#stage").boundingBox()).toEqual(stage);
    await panel.send({ ...diagram, number: 51 });
    await page.locator("#notice").waitFor({ state: "hidden" });
  });

  test("the size, the place, the view and the scenario are kept, and are there again after a reload", async () => {
    const panel = await open();
    const scenario = (await bus.diagram({ view: "wiring" })).scenarios[1]!;
    const diagram = await bus.diagram({ view: "wiring", scenario });
    await show(panel, diagram);
    await panel.page.locator("#stage").focus();
    for (const key of ["+", "+", "ArrowRight"]) await panel.page.keyboard.press(key);
    const box = await viewBoxOf(panel.page);
    const kept = await panel.kept();
    expect(kept).toMatchObject({ uri: diagram.root, view: "wiring", scenario });
    const again = await open({ state: kept! });
    await show(again, diagram);
    expect(await viewBoxOf(again.page)).toEqual(box);
    expect(await again.page.locator("#scenario").inputValue()).toBe(scenario);
  });

  test("each view has a place of its own", async () => {
    const panel = await open();
    const { page } = panel;
    const [wiring, oneLine] = [
      await bus.diagram({ view: "wiring" }),
      await bus.diagram({ view: "one-line" }),
    ];
    await show(panel, wiring);
    await page.locator("#larger").click();
    const box = await viewBoxOf(page);
    await page.locator("#view").selectOption("one-line");
    expect((await panel.said("choose")).at(-1)).toMatchObject({
      view: "one-line",
      scenario: "",
      colours: false,
    });
    await show(panel, oneLine);
    await expect.poll(() => page.locator("#scale").textContent()).not.toBe("");
    await page.locator("#view").selectOption("wiring");
    await show(panel, { ...wiring, number: 77 });
    await expect.poll(() => viewBoxOf(page)).toEqual(box);
  });
});

describe("the cursor in the text", () => {
  test("lights its elements up, and brings one into sight; not while somebody moves the picture", async () => {
    const panel = await open({ reducedMotion: "reduce" });
    const { page } = panel;
    const diagram = await bus.diagram({ view: "wiring" });
    await show(panel, diagram);
    await page.locator("#stage").focus();
    for (let times = 0; times < 8; times++) await page.keyboard.press("+");
    const [left, right] = [named(diagram, "alternator"), named(diagram, "window seats")];
    const stage = (await page.locator("#stage").boundingBox())!;
    const isSeen = async (id: string) => {
      const { x, width } = await onScreen(page, id);
      return x >= stage.x && x + width <= stage.x + stage.width;
    };
    await panel.send({ type: "cursor", number: diagram.number, elements: [right.id] });
    await expect.poll(() => isSeen(right.id)).toBe(true);
    expect(await element(page, right.id).getAttribute("class")).toMatch(/\bmarked\b/);
    await page.locator("#details").getByRole("heading", { name: "window seats" }).waitFor();
    expect(await isSeen(left.id)).toBe(false);

    const box = await viewBoxOf(page);
    await page.mouse.move(stage.x + 400, stage.y + 300);
    await page.mouse.down();
    await panel.send({ type: "cursor", number: diagram.number, elements: [left.id] });
    await page.locator("#details").getByRole("heading", { name: "alternator" }).waitFor();
    expect(await viewBoxOf(page)).toEqual(box);
    await page.mouse.up();
    await panel.send({ type: "cursor", number: diagram.number, elements: [] });
    await panel.send({ type: "cursor", number: diagram.number, elements: [left.id] });
    await expect.poll(() => isSeen(left.id)).toBe(true);
  });
});

describe("nothing of a plan does anything in the page", () => {
  test.each(views)("hostile names are text, in the %s view", async (view) => {
    const plan = await drawnPlan({ "van.ts": hostilePlan() }, "van.ts");
    try {
      const panel = await open();
      const diagram = await plan.diagram({ view, scenario: (await plan.diagram({ view })).scenarios[0]! });
      const elements = diagram.picture!.elements;
      expect(elements.length).toBeGreaterThan(hostileNames.length);
      await show(panel, diagram);
      expect(await panel.said("refused")).toEqual([]);
      expect(await panel.page.locator("#stage").getByRole("button").count()).toBe(elements.length);
      for (const { id } of elements)
        await panel.send({ type: "cursor", number: diagram.number, elements: [id] });
      await panel.send({ type: "trouble", number: 1, message: hostileNames.join(" ") });
      await panel.page.locator("#notice", { hasText: "alert(1)" }).waitFor();
      expect(await strangers(panel.page)).toEqual([]);
    } finally {
      await plan.editor.quit();
    }
  });

  // Pictures that the server cannot have made, one after another in one page; even parsing one makes the policy complain.
  describe("a picture with", () => {
    let panel: DiagramPage;
    let diagram: ShowDiagram;
    let before: string;

    beforeAll(async () => {
      panel = await openDiagramPage(browser);
      diagram = await bus.diagram({ view: "one-line" });
      await show(panel, diagram);
      before = await panel.page.locator("#stage").innerHTML();
    });
    afterAll(() => panel.page.context().close());

    test.each(hostilePictures())("$what is not shown, and the one before stays", async ({ svg, why }) => {
      const refusedBefore = (await panel.said("refused")).length;
      const number = diagram.number + 1_000 + refusedBefore;
      await panel.send({ ...diagram, number, picture: { ...diagram.picture!, svg } });
      await expect.poll(async () => (await panel.said("refused")).length).toBe(refusedBefore + 1);
      await panel.page.locator("#notice", { hasText: "was not shown" }).waitFor();
      const refused = (await panel.said("refused")).at(-1);
      expect(refused).toMatchObject({ type: "refused", number });
      expect(refused!.why).toMatch(why);
      expect(await panel.page.locator("#stage").innerHTML()).toBe(before);
      expect(await strangers(panel.page)).toEqual([]);
      expect(panel.forbidden).toEqual([]);
      // A sound picture is shown again, and takes the notice away.
      await panel.send({ ...diagram, number: number + 500 });
      await panel.page.locator("#notice", { hasText: "was not shown" }).waitFor({ state: "hidden" });
    });
  });

  /** Everything in the stage that is not on the allowed list. */
  async function strangers(page: Page): Promise<string[]> {
    const all = await page.evaluate(() =>
      [...document.querySelectorAll("#stage *")].map((one) => ({
        name: one.localName,
        attributes: [...one.attributes].map(({ name, value }) => [name, value] as const),
      })),
    );
    expect(all.length).toBeGreaterThan(20);
    return all.flatMap(({ name, attributes }) => [
      ...(elementIs(name) === "taken" ? [] : [name]),
      ...attributes
        .filter(([attribute, value]) => attributeIs(attribute, value) === "refused")
        .map(([attribute, value]) => `${attribute}=${value}`),
    ]);
  }
});

function hostilePlan(): string {
  const circuits = hostileNames.map(
    (name, index) =>
      `circuit({ name: ${JSON.stringify(name)}, from: panel.branch, load: ${1 + index / 10}, oneWayFt: 8, gauge: 14, protect: 5, accept: { "protection/headroom": ${JSON.stringify(name)} } });`,
  );
  return `import { battery, build, cable, circuit, fusePanel, scenario } from "loomwright";
build({ name: ${JSON.stringify(hostileNames.slice(0, 6).join(" "))} });
const bank = battery({ name: ${JSON.stringify(hostileNames[0])}, chemistry: "AGM", capacityAh: 60 });
const panel = fusePanel({ name: ${JSON.stringify(hostileNames[1])}, positions: 60, ratedA: 100 });
cable({ name: ${JSON.stringify(hostileNames[3])}, from: bank.positive, to: panel.feed, lengthFt: 4, gauge: 6 });
cable({ name: ${JSON.stringify(hostileNames[4])}, from: panel.negative, to: bank.negative, lengthFt: 4, gauge: 6 });
scenario({ name: ${JSON.stringify(hostileNames[5])} });
${circuits.join("\n")}
`;
}

/** Pictures as a compromised server would make them. */
function hostilePictures(): { what: string; svg: string; why: RegExp }[] {
  const svg = (inside: string, attributes = "") =>
    `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 9 9"${attributes}>${inside}</svg>`;
  const address = "http://127.0.0.1:9/x";
  const alert = "alert(1)";
  return [
    { what: "a script", svg: svg(`<script>${alert}</script>`), why: /<script>/ },
    { what: "an event", svg: svg(`<rect width="1" height="1" onclick="${alert}"/>`), why: /onclick/ },
    { what: "an event of its own", svg: svg("", ` onload="${alert}"`), why: /onload/ },
    {
      what: "a page in it",
      svg: svg(`<foreignObject><p xmlns="http://www.w3.org/1999/xhtml">x</p></foreignObject>`),
      why: /foreignObject/,
    },
    {
      what: "an element of HTML",
      svg: svg(`<img xmlns="http://www.w3.org/1999/xhtml" src="x" onerror="${alert}"/>`),
      why: /img/,
    },
    { what: "a link", svg: svg(`<a href="javascript:${alert}"><text>x</text></a>`), why: /<a>/ },
    { what: "an image", svg: svg(`<image href="${address}.png"/>`), why: /<image>/ },
    { what: "a reference", svg: svg(`<use xlink:href="${address}.svg#a"/>`), why: /<use>/ },
    { what: "a sheet", svg: svg(`<style>@import url(${address}.css);</style>`), why: /<style>/ },
    { what: "a style", svg: svg(`<rect style="fill:url(${address}.svg#a)"/>`), why: /style/ },
    { what: "a paint from elsewhere", svg: svg(`<rect fill="url(${address}.svg#a)"/>`), why: /fill/ },
    {
      what: "an animation",
      svg: svg(`<rect><animate attributeName="href" to="javascript:${alert}"/></rect>`),
      why: /<animate>/,
    },
    {
      what: "an attribute of another namespace",
      svg: svg(`<text xlink:href="${address}">x</text>`),
      why: /xlink:href/,
    },
    {
      what: "no SVG",
      svg: `<html xmlns="http://www.w3.org/1999/xhtml"><script>${alert}</script></html>`,
      why: /not an SVG/,
    },
    { what: "XML that is broken", svg: svg("<g>").slice(0, -4), why: /not an SVG|<parsererror>/ },
    {
      what: "an entity from elsewhere",
      svg: `<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/passwd">]>${svg("<text>&x;</text>")}`,
      why: /document type/,
    },
    {
      what: "too deep a nest",
      svg: svg("<g>".repeat(5_000) + "</g>".repeat(5_000)),
      why: /<g>|not an SVG|parsererror/,
    },
  ];
}

describe("as the person has set up the machine", () => {
  test("with forced colours, lines and words have the system's colours", async () => {
    const panel = await open({ forcedColors: "active" });
    const diagram = await bus.diagram({ view: "wiring" });
    await show(panel, diagram);
    const system = await panel.page.evaluate(() => {
      const probe = document.createElement("i");
      probe.style.color = "CanvasText";
      document.body.append(probe);
      return getComputedStyle(probe).color;
    });
    const inks = await panel.page
      .locator("#stage text")
      .evaluateAll((texts) => [...new Set(texts.map((text) => getComputedStyle(text).fill))]);
    expect(inks).toEqual([system]);
  });

  test("with reduced motion nothing glides: what is brought into sight is there at once", async () => {
    const panel = await open({ reducedMotion: "reduce" });
    const diagram = await bus.diagram({ view: "wiring" });
    await show(panel, diagram);
    await panel.page.locator("#stage").focus();
    for (let times = 0; times < 8; times++) await panel.page.keyboard.press("+");
    const changes = await panel.page.evaluate(
      ([id, number]) =>
        new Promise<number>((resolve) => {
          let count = 0;
          const svg = document.querySelector("#stage svg")!;
          new MutationObserver((records) => {
            count += records.length;
            requestAnimationFrame(() => requestAnimationFrame(() => resolve(count)));
          }).observe(svg, { attributes: true, attributeFilter: ["viewBox"] });
          postMessage({ type: "cursor", number, elements: [id] }, "*");
        }),
      [named(diagram, "window seats").id, diagram.number] as const,
    );
    expect(changes).toBe(1);
  });
});
