import { type ChildProcess, spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** VS Code's server, on a free port of this machine, with its own empty data folders. */
export interface EditorServer {
  /** "http://127.0.0.1:40123" */
  readonly origin: string;
  /** "127.0.0.1:40123", as used in vscode-remote addresses. */
  readonly authority: string;
  /** The folder with all its data, including the installed extensions; it is in the command line of every child process. */
  readonly data: string;
  /** Its output so far, for a failing test's message. */
  printed(): string;
}

export interface EditorServerOptions {
  /** .vsix files installed before it starts. */
  readonly extensions: readonly string[];
  /** False: folders start in restricted mode until a user trusts them. */
  readonly trustEverything: boolean;
  /** Settings of the machine, besides those that keep it quiet. */
  readonly machineSettings?: Readonly<Record<string, unknown>>;
}

export async function startEditorServer(options: EditorServerOptions): Promise<EditorServer> {
  const editor = fromEnvironment("LOOMWRIGHT_EDITOR");
  const data = mkdtempSync(join(tmpdir(), "loomwright-editor-"));
  const remove = () => rmSync(data, { recursive: true, force: true, maxRetries: 10, retryDelay: 100 });
  const folders = [
    ["--user-data-dir", join(data, "user")],
    ["--server-data-dir", join(data, "server")],
    ["--extensions-dir", join(data, "extensions")],
  ].flat();
  const start = (args: readonly string[]) =>
    spawn(process.execPath, [join(editor, "out/server-main.js"), ...folders, ...args], {
      stdio: ["ignore", "pipe", "pipe"],
      env: { ...process.env, HOME: data },
      // A separate process group, to end the extension hosts and servers below it too.
      detached: true,
    });
  try {
    writeMachineSettings(join(data, "user"), options.machineSettings);
    for (const extension of options.extensions) {
      await untilExit(start(["--accept-server-license-terms", "--install-extension", extension]));
    }
    const child = start([
      ...[
        "--host",
        "127.0.0.1",
        "--port",
        "0",
        "--without-connection-token",
        "--accept-server-license-terms",
      ],
      ...["--telemetry-level", "off"],
      ...(options.trustEverything ? ["--disable-workspace-trust"] : []),
    ]);
    endWithUs(child, remove);
    const printed = collect(child);
    const port = await listeningPort(child, printed);
    return {
      origin: `http://127.0.0.1:${port}`,
      authority: `127.0.0.1:${port}`,
      data,
      printed,
    };
  } catch (error) {
    remove();
    throw error;
  }
}

type Provided = "LOOMWRIGHT_EDITOR" | "LOOMWRIGHT_CHROMIUM" | "LOOMWRIGHT_VSIX" | "LOOMWRIGHT_SUITE";

/** Passed on by run.mjs, which fetches and builds everything the tests need before they start. */
export function fromEnvironment(name: Provided): string {
  const value = process.env[name];
  if (!value) throw new Error(`${name} is not set: start these tests with "node tests/editor/run.mjs"`);
  return value;
}

/** Quiet, and the same in every run: no network requests, no pop-ups over the tested parts. */
function writeMachineSettings(userData: string, also: EditorServerOptions["machineSettings"]): void {
  const folder = join(userData, "Machine");
  mkdirSync(folder, { recursive: true });
  const settings = {
    "typescript.disableAutomaticTypeAcquisition": true,
    // One server of TypeScript's own for a window, not two.
    "typescript.tsserver.useSyntaxServer": "never",
    "telemetry.telemetryLevel": "off",
    "extensions.autoCheckUpdates": false,
    "extensions.ignoreRecommendations": true,
    "workbench.startupEditor": "none",
    "workbench.tips.enabled": false,
    "git.enabled": false,
    // None of the extensions runs in the browser; a host for them takes a fifth of the time to open a window.
    "extensions.webWorker": false,
    ...also,
  };
  writeFileSync(join(folder, "settings.json"), JSON.stringify(settings, undefined, 2));
}

function collect(child: ChildProcess): () => string {
  let text = "";
  child.stdout?.on("data", (data) => {
    text += data;
  });
  child.stderr?.on("data", (data) => {
    text += data;
  });
  return () => text;
}

async function untilExit(child: ChildProcess): Promise<void> {
  const printed = collect(child);
  const code = await new Promise<number | null>((resolve) => child.on("close", resolve));
  if (code !== 0) throw new Error(`VS Code would not install the extension:\n${printed()}`);
}

function listeningPort(child: ChildProcess, printed: () => string): Promise<number> {
  return new Promise((resolve, reject) => {
    child.stdout?.on("data", () => {
      const port = /Extension host agent listening on (\d+)/.exec(printed())?.[1];
      if (port) resolve(Number(port));
    });
    child.on("close", (code) => reject(new Error(`VS Code's server ended with ${code}:\n${printed()}`)));
  });
}

/** The editors of this process, each with the removal of its folder. */
const editors: { readonly child: ChildProcess; readonly remove: () => void }[] = [];

/** After the tests, or an interruption of them, no editor keeps running, with its extension hosts and language servers. */
function endWithUs(child: ChildProcess, remove: () => void): void {
  editors.push({ child, remove });
  if (editors.length > 1) return;
  process.once("exit", () => {
    // All editors end before a folder is removed: a removal takes time, can fail, and the worker may be killed during it.
    for (const { child } of editors) {
      if (child.pid !== undefined && child.exitCode === null && child.signalCode === null)
        process.kill(-child.pid, "SIGKILL");
    }
    for (const { remove } of editors) {
      try {
        remove();
      } catch {
        // A dying process wrote into it once more: the rest remains in the folder for temporary files.
      }
    }
  });
  // Vitest's worker is ended by a signal, or by the end of the process that started it. Listening for these removes their usual
  // effect, so the exit must be explicit; the browser then ends too.
  const exit = () => process.exit(1);
  for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"] as const) process.once(signal, exit);
  process.once("disconnect", exit);
}
