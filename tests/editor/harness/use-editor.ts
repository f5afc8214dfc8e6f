import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll } from "vitest";
import {
  type EditorServer,
  type EditorServerOptions,
  fromEnvironment,
  startEditorServer,
} from "./editor-server.ts";
import { openWindow, remoteAddress, startBrowser, type WindowOptions } from "./workbench.ts";

/**
 * An editor with the packed extension installed. Files of stories that ask for the same one share it, and its browser: it starts
 * before the first story of the first of them, and ends with the process.
 */
export interface Editor {
  server(): EditorServer;
  /**
   * Opens a folder in a fresh window, replacing the one before, and in it a file. A failing story leaves a picture of the window.
   */
  open(folder: string, options?: { readonly file?: string } & Partial<WindowOptions>): Promise<Page>;
  /** A new folder outside the work tree with these files, deleted at the end of the file of stories. */
  folder(files: Readonly<Record<string, string>>): string;
}

/** The folder for pictures of failed stories. */
const pictures = fileURLToPath(new URL("../dist/failed", import.meta.url));

/** By their options. */
const servers = new Map<string, Promise<EditorServer>>();
let browserOfAll: Promise<Browser> | undefined;

export function useEditor(options: Omit<EditorServerOptions, "extensions">): Editor {
  let server: EditorServer | undefined;
  let browser: Browser | undefined;
  let page: Page | undefined;
  const folders: string[] = [];

  beforeAll(async () => {
    const key = JSON.stringify(options);
    const started =
      servers.get(key) ?? startEditorServer({ extensions: [fromEnvironment("LOOMWRIGHT_VSIX")], ...options });
    servers.set(key, started);
    server = await started;
    browserOfAll ??= startBrowser();
    browser = await browserOfAll;
  });
  afterEach(async ({ task }) => {
    if (task.result?.state !== "fail" || !page || page.isClosed()) return;
    mkdirSync(pictures, { recursive: true });
    await page.screenshot({ path: join(pictures, `${task.name.replace(/\W+/g, "-").slice(0, 80)}.png`) });
  });
  afterAll(async () => {
    await page?.context().close();
    for (const folder of folders) rmSync(folder, { recursive: true, force: true });
  });

  const started = () => {
    if (!server) throw new Error("the editor has not been started");
    return server;
  };
  return {
    server: started,
    async open(folder, { file, ...rest } = {}) {
      if (!browser) throw new Error("the browser has not been started");
      await page?.context().close();
      const payload = file ? [["openFile", remoteAddress(started(), join(folder, file))] as const] : [];
      page = await openWindow(browser, started(), { folder, payload, ...rest });
      return page;
    },
    folder(files) {
      const folder = realpathSync(mkdtempSync(join(tmpdir(), "loomwright-story-")));
      folders.push(folder);
      for (const [name, text] of Object.entries(files)) {
        mkdirSync(dirname(join(folder, name)), { recursive: true });
        writeFileSync(join(folder, name), text);
      }
      return folder;
    },
  };
}
