import { basename } from "node:path";
import { type Browser, chromium, type Page } from "playwright-core";
import { sampled } from "../../setup/sampled.ts";
import { type EditorServer, fromEnvironment } from "./editor-server.ts";
import { runFromPalette, shows } from "./on-screen.ts";

/** One Chromium for all windows of a test file. */
export function startBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: fromEnvironment("LOOMWRIGHT_CHROMIUM"),
    // No sandbox: the tests run as root in containers. The other flags keep the browser from using the network.
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
}

export interface WindowOptions {
  /** Absolute path of the folder to open. */
  readonly folder: string;
  /** Pairs that the workbench accepts in its address: a file to open, a suite to run in the extension host. */
  readonly payload?: readonly (readonly [string, string])[];
  /** Called with the page before it navigates. */
  readonly before?: (page: Page) => Promise<void>;
  readonly viewport?: { readonly width: number; readonly height: number };
}

export const defaultViewport: { readonly width: number; readonly height: number } = {
  width: 1280,
  height: 800,
};

/** Opens a folder in a fresh profile, and waits until the workbench is drawn. */
export async function openWindow(
  browser: Browser,
  server: EditorServer,
  options: WindowOptions,
): Promise<Page> {
  const context = await browser.newContext({
    viewport: options.viewport ?? defaultViewport,
  });
  context.setDefaultTimeout(60_000);
  const page = await context.newPage();
  await options.before?.(page);
  const address = new URL(server.origin);
  address.searchParams.set("folder", options.folder);
  if (options.payload) address.searchParams.set("payload", JSON.stringify(options.payload));
  await page.goto(address.href);
  await page.waitForSelector(".monaco-workbench .part.editor");
  return page;
}

/** Closes every editor, without saving, and every notification. */
export async function clearWindow(page: Page): Promise<void> {
  const tab = page.locator(".part.editor .tab").first();
  const dropChanges = page.locator(".monaco-dialog-box .monaco-button", { hasText: "Don't Save" });
  await page.keyboard.press("Escape");
  for (let tries = 0; (await tab.count()) > 0; tries++) {
    if (tries === 10) throw new Error("the editors of the story before cannot be closed");
    // An editor that is still being filled can take the focus from the palette, and the command does nothing.
    await runFromPalette(page, "View: Close All Editors");
    if (await shows(dropChanges, 1_000)) await dropChanges.click();
    await shows(tab, 5_000, "detached");
  }
  await runFromPalette(page, "Notifications: Clear All Notifications");
}

/** Opens a file by its absolute path, as a person does in the list of files, and waits until the cursor is in it. */
export async function openFile(page: Page, path: string): Promise<void> {
  const input = page.locator(".quick-input-widget input[type=text]").first();
  const row = page.locator(".quick-input-list .monaco-list-row", { hasText: basename(path) }).first();
  const tab = page.locator(".part.editor .tab.active", { hasText: basename(path) });
  for (let tries = 0; tries < 10; tries++) {
    await page.keyboard.press("Control+P");
    const typed = input.fill(path, { timeout: 1_000 }).then(
      () => true,
      () => false,
    );
    if ((await typed) && (await shows(row, 3_000))) {
      await page.keyboard.press("Enter");
      if (await shows(tab, 10_000)) return;
    }
    await page.keyboard.press("Escape");
  }
  throw new Error(`the editor does not open ${path}`);
}

/** The views beside a text, each with a story in which the window is reloaded. */
const views = ["boards", "diagram", "energy"] as const;

/** Whether this run reloads the window with this view. */
export function isReloaded(view: (typeof views)[number]): boolean {
  return sampled("views back after a reload", views).includes(view);
}

/**
 * Reloads the window, like closing the browser and coming back: the kept tabs are shown again, without the initial request for a
 * file. The editor saves its tabs only now and then, so this waits until `tab` is found in the saved state.
 */
export async function reloadWindow(page: Page, tab: RegExp): Promise<void> {
  // The driver's own wait would take the promise itself for the answer.
  const latest = Date.now() + 60_000;
  while (!(await page.evaluate(keptTabs, tab.source))) {
    if (Date.now() > latest) throw new Error(`the editor has saved no tab with ${tab}`);
    await page.waitForTimeout(250);
  }
  const address = new URL(page.url());
  address.searchParams.delete("payload");
  await page.goto(address.href);
  await page.waitForSelector(".monaco-workbench .part.editor");
}

/** Whether this is found in the tabs that the workbench has saved so far. Runs in the page. */
async function keptTabs(tab: string): Promise<boolean> {
  for (const { name = "" } of await indexedDB.databases()) {
    if (!name.startsWith("vscode-web-state-db-")) continue;
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const opened = indexedDB.open(name);
      opened.onsuccess = () => resolve(opened.result);
      opened.onerror = () => reject(opened.error);
    });
    const tabs = await new Promise<unknown>((resolve, reject) => {
      const read = database
        .transaction("ItemTable")
        .objectStore("ItemTable")
        .get("memento/workbench.parts.editor");
      read.onsuccess = () => resolve(read.result);
      read.onerror = () => reject(read.error);
    }).finally(() => database.close());
    if (typeof tabs === "string" && new RegExp(tab).test(tabs)) return true;
  }
  return false;
}

/** The address of a file of this machine in the workbench. */
export function remoteAddress(server: EditorServer, path: string): string {
  return `vscode-remote://${server.authority}${path}`;
}
