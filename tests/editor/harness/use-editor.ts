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
import {
  clearWindow,
  defaultViewport,
  openFile,
  openWindow,
  remoteAddress,
  startBrowser,
  type WindowOptions,
} from "./workbench.ts";

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
  /**
   * Shows a file of these, in a folder of their own within the folder of a window that stories share. Of the stories before,
   * no editor and no notification is left there. For stories that need no folder, setting or trust of a window to themselves.
   */
  show(
    files: Readonly<Record<string, string>>,
    file: string,
    options?: Pick<WindowOptions, "viewport">,
  ): Promise<{ readonly page: Page; readonly folder: string }>;
  /** A new folder outside the work tree with these files, deleted at the end of the file of stories. */
  folder(files: Readonly<Record<string, string>>): string;
}

/** The folder for pictures of failed stories. */
const pictures = fileURLToPath(new URL("../dist/failed", import.meta.url));

/** By their options. */
const servers = new Map<string, Promise<EditorServer>>();
let browserOfAll: Promise<Browser> | undefined;

interface SharedWindow {
  readonly page: Page;
  /** Of the folders that it has shown. */
  readonly root: string;
  shown: number;
}

/** Of the editors, while it is open. */
const sharedWindows = new Map<EditorServer, SharedWindow>();

/** A new folder outside the work tree. */
function newFolder(): string {
  return realpathSync(mkdtempSync(join(tmpdir(), "loomwright-story-")));
}

function write(folder: string, files: Readonly<Record<string, string>>): string {
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
  return folder;
}

/** The window of an editor that stories share, with nothing left of the story before. */
async function sharedWindow(
  browser: Browser,
  server: EditorServer,
  viewport = defaultViewport,
): Promise<SharedWindow> {
  const before = sharedWindows.get(server);
  if (before) {
    await before.page.setViewportSize(viewport);
    await clearWindow(before.page);
    return before;
  }
  const root = newFolder();
  process.once("exit", () => rmSync(root, { recursive: true, force: true }));
  const window = { page: await openWindow(browser, server, { folder: root, viewport }), root, shown: 0 };
  sharedWindows.set(server, window);
  return window;
}

export function useEditor(options: Omit<EditorServerOptions, "extensions">): Editor {
  let server: EditorServer | undefined;
  let browser: Browser | undefined;
  /** The window of these stories alone, and the one that was shown last. */
  let own: Page | undefined;
  let shown: Page | undefined;
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
    if (task.result?.state !== "fail" || !shown || shown.isClosed()) return;
    mkdirSync(pictures, { recursive: true });
    await shown.screenshot({ path: join(pictures, `${task.name.replace(/\W+/g, "-").slice(0, 80)}.png`) });
  });
  afterAll(async () => {
    await own?.context().close();
    for (const folder of folders) rmSync(folder, { recursive: true, force: true });
  });

  const started = () => {
    if (!server) throw new Error("the editor has not been started");
    return server;
  };
  return {
    server: started,
    async show(files, file, { viewport } = {}) {
      if (!browser) throw new Error("the browser has not been started");
      const window = await sharedWindow(browser, started(), viewport);
      window.shown += 1;
      const folder = write(join(window.root, String(window.shown)), files);
      shown = window.page;
      await openFile(window.page, join(folder, file));
      return { page: window.page, folder };
    },
    async open(folder, { file, ...rest } = {}) {
      if (!browser) throw new Error("the browser has not been started");
      await own?.context().close();
      const payload = file ? [["openFile", remoteAddress(started(), join(folder, file))] as const] : [];
      own = await openWindow(browser, started(), { folder, payload, ...rest });
      shown = own;
      return own;
    },
    folder(files) {
      const folder = newFolder();
      folders.push(folder);
      return write(folder, files);
    },
  };
}
