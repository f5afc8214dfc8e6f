import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, BrowserContext, Page } from "playwright-core";
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

interface Started {
  readonly server: EditorServer;
  /** Of all its windows: what one has loaded and compiled, the next one need not. */
  readonly context: BrowserContext;
}

/** By their options. */
const editors = new Map<string, Promise<Started>>();
let browserOfAll: Promise<Browser> | undefined;

async function start(options: EditorServerOptions): Promise<Started> {
  const server = await startEditorServer(options);
  browserOfAll ??= startBrowser();
  const context = await (await browserOfAll).newContext();
  context.setDefaultTimeout(60_000);
  return { server, context };
}

export function useEditor(options: Omit<EditorServerOptions, "extensions">): Editor {
  let editor: Started | undefined;
  let page: Page | undefined;
  const folders: string[] = [];

  beforeAll(async () => {
    const key = JSON.stringify(options);
    const started =
      editors.get(key) ?? start({ extensions: [fromEnvironment("LOOMWRIGHT_VSIX")], ...options });
    editors.set(key, started);
    editor = await started;
  });
  afterEach(async ({ task }) => {
    if (task.result?.state !== "fail" || !page || page.isClosed()) return;
    mkdirSync(pictures, { recursive: true });
    await page.screenshot({ path: join(pictures, `${task.name.replace(/\W+/g, "-").slice(0, 80)}.png`) });
  });
  afterAll(async () => {
    await page?.close();
    for (const folder of folders) rmSync(folder, { recursive: true, force: true });
  });

  const started = () => {
    if (!editor) throw new Error("the editor has not been started");
    return editor;
  };
  return {
    server: () => started().server,
    async open(folder, { file, ...rest } = {}) {
      const { server, context } = started();
      await page?.close();
      const payload = file ? [["openFile", remoteAddress(server, join(folder, file))] as const] : [];
      page = await openWindow(context, server, { folder, payload, ...rest });
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
