import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright-core";
import type * as Board from "../../../extension/board/messages.ts";
import { boardsPageHtml } from "../../../extension/board/page-html.ts";
import type { FromPage, ShowDiagram, ToPage } from "../../../extension/diagram/messages.ts";
import { pageHtml } from "../../../extension/diagram/page-html.ts";
import type { PanelState } from "../../../extension/diagram/panel-state.ts";
import type * as Energy from "../../../extension/energy/messages.ts";
import { energyPageHtml } from "../../../extension/energy/page-html.ts";

/** A page of ours as shipped, in a separate browser without the workbench around it. */
export interface ShippedPage<Sent, Said extends { readonly type: string }, State> {
  readonly page: Page;
  send(message: Sent): Promise<void>;
  /** The page's messages of one kind. */
  said<Type extends Said["type"]>(type: Type): Promise<Extract<Said, { type: Type }>[]>;
  /** The state that it would have the editor keep. */
  kept(): Promise<State | undefined>;
  /** Forbidden events: a network request, an exception, a console error, or a dialogue. */
  readonly forbidden: readonly string[];
  /** Violations stopped by the page's policy: none with one of our plans, because its content never gets that far. */
  readonly stopped: readonly string[];
}

export type DiagramPage = ShippedPage<ToPage, FromPage, PanelState>;
export type BoardsPage = ShippedPage<Board.ToPage, Board.FromPage, Board.ViewState>;
export type EnergyPage = ShippedPage<Energy.ToPage, Energy.FromPage, Energy.ViewState>;

interface PageOptions<State> {
  readonly state?: State;
  readonly viewport?: { readonly width: number; readonly height: number };
  /** Custom properties of a theme, as the editor gives them to its webviews, and the class of its body. */
  readonly theme?: { readonly kind: string; readonly colours: Readonly<Record<string, string>> };
  readonly reducedMotion?: "reduce" | "no-preference";
  readonly forcedColors?: "active" | "none";
}

const dist = new URL("../../../extension/dist/", import.meta.url);
const origin = "https://page.test";

export function openDiagramPage(
  browser: Browser,
  options: PageOptions<PanelState> = {},
): Promise<DiagramPage> {
  return openPage(browser, "diagram-page", pageHtml, options);
}

export function openEnergyPage(
  browser: Browser,
  options: PageOptions<Energy.ViewState> = {},
): Promise<EnergyPage> {
  return openPage(browser, "energy-page", energyPageHtml, options);
}

export function openBoardsPage(
  browser: Browser,
  options: PageOptions<Board.ViewState> = {},
): Promise<BoardsPage> {
  return openPage(browser, "board-page", boardsPageHtml, options);
}

async function openPage<Sent, Said extends { readonly type: string }, State>(
  browser: Browser,
  name: string,
  html: typeof pageHtml,
  options: PageOptions<State>,
): Promise<ShippedPage<Sent, Said, State>> {
  const { state, theme, viewport = { width: 900, height: 700 }, ...media } = options;
  const context = await browser.newContext({ viewport, ...media });
  context.setDefaultTimeout(10_000);
  const page = await context.newPage();
  const forbidden: string[] = [];
  const stopped: string[] = [];
  page.on("dialog", (dialog) => {
    forbidden.push(`dialogue: ${dialog.message()}`);
    void dialog.dismiss();
  });
  page.on("pageerror", (error) => forbidden.push(`error: ${error.message}`));
  page.on("console", (message) => {
    if (message.type() !== "error") return;
    const text = message.text();
    (/violates the following Content Security Policy/.test(text) ? stopped : forbidden).push(text);
  });
  const files: Readonly<Record<string, () => { contentType: string; body: string }>> = {
    "/": () => ({
      contentType: "text/html",
      body: html({
        nonce: "n0nce",
        source: origin,
        script: `${origin}/${name}.js`,
        style: `${origin}/${name}.css`,
      }),
    }),
    [`/${name}.js`]: () => ({ contentType: "text/javascript", body: built(`${name}.js`) }),
    [`/${name}.css`]: () => ({ contentType: "text/css", body: built(`${name}.css`) }),
  };
  await page.route("**/*", (route) => {
    const url = new URL(route.request().url());
    const file = url.origin === origin ? files[url.pathname] : undefined;
    if (file) return route.fulfill(file());
    if (url.pathname !== "/favicon.ico") forbidden.push(`request: ${url.href}`);
    return route.abort();
  });
  // Not subject to the page's policy, like the editor's own script.
  await page.addInitScript(
    ({ kept, look }) => {
      const all = globalThis as unknown as { said: unknown[]; kept: unknown; acquireVsCodeApi: unknown };
      all.said = [];
      all.kept = kept;
      all.acquireVsCodeApi = () => ({
        postMessage: (message: unknown) => all.said.push(JSON.parse(JSON.stringify(message))),
        getState: () => all.kept,
        setState: (next: unknown) => {
          all.kept = JSON.parse(JSON.stringify(next));
        },
      });
      addEventListener("DOMContentLoaded", () => {
        for (const [name, value] of Object.entries(look?.colours ?? {}))
          document.documentElement.style.setProperty(name, value);
        if (look) document.body.className = look.kind;
      });
    },
    { kept: state, look: theme },
  );
  await page.goto(`${origin}/`);
  return {
    page,
    forbidden,
    stopped,
    send: (message) => page.evaluate((sent) => postMessage(sent, "*"), message),
    said: (type) =>
      page.evaluate(
        (wanted) =>
          (globalThis as unknown as { said: { type: string }[] }).said.filter((one) => one.type === wanted),
        type,
      ) as never,
    kept: () => page.evaluate(() => (globalThis as unknown as { kept: never }).kept),
  };
}

/** Shows a diagram and waits until it is drawn. */
export async function show({ send, page }: DiagramPage, diagram: ShowDiagram): Promise<void> {
  await send(diagram);
  if (diagram.picture) await page.locator("#stage svg").waitFor();
}

function built(name: string): string {
  return readFileSync(fileURLToPath(new URL(name, dist)), "utf8");
}
