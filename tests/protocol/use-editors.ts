import { afterAll, afterEach, expect } from "vitest";
import { pushing } from "./capabilities.mjs";
import { type EditorOptions, type ScriptedEditor, startEditor } from "./scripted-editor.ts";
import type { ScriptedServer } from "./scripted-server.ts";

/**
 * Starts editors for the tests of this file, each in a new folder, and ends them after the test. Editors with the same options have
 * the same server one after another: its start takes longer than most tests. A server that a test has changed, or in which a test
 * has failed, serves no other; a test about the server as it is started asks for `ownServer`.
 */
export function useEditors(): (options: EditorOptions & { ownServer?: boolean }) => Promise<ScriptedEditor> {
  const used = new Map<ScriptedEditor, string | undefined>();
  const free = new Map<string, ScriptedServer[]>();

  afterEach(async ({ task }) => {
    const hasFailed = task.result?.state === "fail";
    for (const [editor, key] of [...used]) {
      used.delete(editor);
      if (key === undefined || hasFailed) {
        expect(await editor.quit()).toBe(0);
        continue;
      }
      const server = await editor.leave();
      if (server.isAsStarted) free.set(key, [...(free.get(key) ?? []), server]);
      else expect(await server.quit()).toBe(0);
    }
  });
  afterAll(async () => {
    for (const server of [...free.values()].flat()) expect(await server.quit()).toBe(0);
  });

  return async ({ ownServer, ...options }) => {
    const { files: _, ...ofServer } = options;
    const canMove = (options.capabilities ?? pushing).workspace?.workspaceFolders === true;
    const key = canMove && !ownServer ? JSON.stringify(ofServer) : undefined;
    const server = key === undefined ? undefined : free.get(key)?.pop();
    const started = await startEditor(options, server);
    const editor: ScriptedEditor = {
      ...started,
      quit() {
        used.delete(editor);
        return started.quit();
      },
    };
    used.set(editor, key);
    return editor;
  };
}
