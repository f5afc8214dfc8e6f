import { execFileSync } from "node:child_process";
import { cpSync, existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import axe from "axe-core";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { sampled } from "../../setup/sampled.ts";
import { startBrowser } from "../harness/workbench.ts";

// The report as the command writes it, in a browser: read by a program for screen readers, on narrow screens, and printed.

const house = fileURLToPath(new URL("../../..", import.meta.url));

let folder: string;
let browser: Browser;
const forbidden: string[] = [];

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "loomwright-report-page-"));
  // A project of its own: in the house, the command would look for the plan's importers among all our files.
  writeFileSync(join(folder, "package.json"), "{}");
  cpSync(join(house, "examples"), join(folder, "examples"), { recursive: true });
  browser = await startBrowser();
});
afterEach(() => {
  expect(forbidden.splice(0)).toEqual([]);
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
});

type Edition = "inspector" | "bench";

/** Written once for all tests of it. */
function written(plan: string, edition: Edition): string {
  const file = join(folder, `${plan.replaceAll("/", "-")}.${edition}.html`);
  if (existsSync(file)) return file;
  const words = ["report", `examples/${plan}`, "--edition", edition, "--out", file];
  execFileSync(process.execPath, [join(house, "library/bin/loomwright.cjs"), ...words], { cwd: folder });
  return file;
}

interface Opened {
  readonly edition?: Edition;
  readonly width?: number;
  readonly colorScheme?: "light" | "dark";
}

async function open(plan: string, opened: Opened = {}): Promise<Page> {
  const { edition = "inspector", width = 1280, colorScheme = "light" } = opened;
  const file = written(plan, edition);
  const context = await browser.newContext({ viewport: { width, height: 900 }, colorScheme });
  const page = await context.newPage();
  page.on("console", (message) => forbidden.push(message.text()));
  page.on("pageerror", (error) => forbidden.push(error.message));
  const address = pathToFileURL(file).href;
  page.on("request", (request) => {
    if (request.url() !== address) forbidden.push(request.url());
  });
  await page.goto(address);
  return page;
}

const reports: readonly (readonly [plan: string, edition: Edition])[] = [
  ["library-bus/bus.ts", "inspector"],
  ["library-bus/bus.ts", "bench"],
  ["faulty-workshop/workshop.ts", "inspector"],
  ["faulty-workshop/workshop.ts", "bench"],
  ["faulty-workshop/pumping-station.ts", "inspector"],
];

describe.each(sampled("reports in a browser", reports))("%s, for the %s", (plan, edition) => {
  test.each(sampled("appearances of a page", ["light", "dark"] as const))(
    "%s: a screen reader and a keyboard reach all of it",
    async (colorScheme) => {
      const page = await open(plan, { edition, colorScheme });
      await page.evaluate(axe.source);
      const violations = await page.evaluate(async () => {
        const run = (globalThis as unknown as { axe: { run(): Promise<{ violations: Violation[] }> } }).axe
          .run;
        interface Violation {
          readonly id: string;
          readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
        }
        return (await run()).violations.map(({ id, nodes }) => [
          id,
          nodes[0]?.html.slice(0, 200),
          nodes[0]?.failureSummary,
        ]);
      });
      expect(violations).toEqual([]);
      await page.context().close();
    },
  );

  test.each(sampled("appearances of a page", [1280, 360]))(
    "on a screen %i wide the page itself never has to be moved sideways",
    async (width) => {
      const page = await open(plan, { edition, width });
      const over = await page.evaluate(
        "document.documentElement.scrollWidth - document.documentElement.clientWidth",
      );
      expect(over).toBeLessThanOrEqual(0);
      const drawings = page.locator(".drawing svg");
      for (const drawing of await drawings.all())
        expect((await drawing.boundingBox())!.width).toBeLessThanOrEqual(width);
      await page.context().close();
    },
  );

  test.each(sampled("appearances of a page", ["A4", "Letter"] as const))(
    "printed on %s, every page has something on it, and nothing runs off the paper",
    async (format) => {
      const page = await open(plan, { edition });
      const bytes = await page.pdf({ format, preferCSSPageSize: true });
      await page.context().close();
      const pdf = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
      const [first] = (await pdf.getPage(1)).view.slice(2);
      let lying = 0;
      for (let number = 1; number <= pdf.numPages; number++) {
        const sheet = await pdf.getPage(number);
        const [width = 0, height = 0] = sheet.view.slice(2);
        if (width > height) lying++;
        const { items } = await sheet.getTextContent();
        const texts = items.flatMap((item) => ("str" in item && item.str.trim() !== "" ? [item] : []));
        // More than the three texts at the foot of every page.
        expect(texts.length, `page ${number}`).toBeGreaterThan(3);
        for (const { str, transform, width: wide } of texts) {
          const x = transform[4] as number;
          expect([number, str, x >= 20 && x + wide <= width - 20]).toEqual([number, str, true]);
        }
      }
      expect(first).toBeLessThan(620);
      expect(lying).toBeGreaterThan(0);
      expect(lying).toBeLessThan(pdf.numPages);
      await pdf.destroy();
    },
  );
});

test("links lead to findings, sources and chapters", async () => {
  const page = await open("faulty-workshop/workshop.ts");
  await page.getByRole("link", { name: /Limits and their sources/ }).click();
  expect(new URL(page.url()).hash).toBe("#limits");
  await page
    .getByRole("table", { name: "What was checked" })
    .getByRole("link", { name: "F1", exact: true })
    .click();
  await page.locator("article#F1").waitFor();
  expect(await page.evaluate("document.querySelector(':target')?.id")).toBe("F1");
  await page.context().close();
});
