import { execFileSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import type { EditorServer, EditorServerOptions } from "./editor-server.ts";

/**
 * The editor whose server stories hold up or kill. It has a setting of its own, and so a process of its own: the server of no other
 * story is in the way.
 */
export const editorToDisturb: Omit<EditorServerOptions, "extensions"> = {
  trustEverything: true,
  machineSettings: { "workbench.enableExperiments": false },
};

/** Process ids of the language servers below an editor, recognised by the path of their bundle among its installed extensions. */
export function serverProcesses(editor: EditorServer): number[] {
  return processes()
    .filter(({ words }) => words.includes(editor.data) && words.includes("language-server.cjs"))
    .map(({ id }) => id);
}

/** Linux shows them in /proc; small containers have no `ps`. */
function processes(): { readonly id: number; readonly words: string }[] {
  if (!existsSync("/proc/self/cmdline")) {
    const lines = execFileSync("ps", ["-Ao", "pid=,args="]).toString().split("\n");
    return lines.map((line) => ({ id: Number.parseInt(line, 10), words: line }));
  }
  return readdirSync("/proc")
    .filter((name) => /^\d+$/.test(name))
    .flatMap((name) => {
      try {
        return [{ id: Number(name), words: readFileSync(`/proc/${name}/cmdline`, "utf8") }];
      } catch {
        // It ended since the folder was read.
        return [];
      }
    });
}
