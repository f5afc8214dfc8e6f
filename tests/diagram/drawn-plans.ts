import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { afterAll } from "vitest";
import { drawDiagram } from "../../library/documents/diagram/draw-diagram.ts";
import type { Drawing, DrawingOptions } from "../../library/documents/diagram/drawing.ts";
import { layOut } from "../../library/documents/diagram/lay-out.ts";
import type { Judgement } from "../../library/judge.ts";
import { createChecker } from "../../server/evaluate/checker.ts";
import { diskWorkspace } from "../../server/evaluate/files/disk-workspace.ts";
import { sharedSandbox } from "../../server/evaluate/shared-sandbox.tester.ts";
import type { Workspace } from "../../server/evaluate/workspace.ts";

/*
 * For tests of drawings: plans from files and from texts, judged, and drawn by the production code.
 */

const house = fileURLToPath(new URL("../..", import.meta.url));

/** Every plan that a reader would learn from, the faulty ones too, as paths from the house. */
export const examplePlans: readonly string[] = readdirSync(join(house, "examples"), { recursive: true })
  .map((name) => `examples/${String(name).replaceAll("\\", "/")}`)
  // One of them never ends, and makes too many circuits for a drawing.
  .filter((name) => name.endsWith(".ts") && !name.endsWith("/endless.ts") && importsTheLibrary(name))
  .sort();

export const correctNetworks: readonly string[] = readdirSync(join(house, "tests/networks/correct"))
  .map((name) => `tests/networks/correct/${name}`)
  .sort();

/** Judges plans from files. For the top of a test file: the checker is disposed of after the tests of that file. */
export function fileJudge(): (file: string) => Promise<Judgement> {
  const onDisk = createChecker(diskWorkspace([pathToFileURL(house).href]), { sandbox: sharedSandbox });
  afterAll(() => onDisk.dispose());
  return async (file) => {
    const outcome = await onDisk.check(pathToFileURL(join(house, file)).href);
    if (outcome.state !== "checked") throw new Error(`${file} is ${outcome.state}`);
    return outcome.judgement;
  };
}

/** A plan without a file. */
export async function judgedText(text: string): Promise<Judgement> {
  const uri = "file:///drawn/plan.ts";
  const workspace: Workspace = {
    read: (asked) => (asked === uri ? { uri, version: "1", text } : undefined),
    folders: () => ["file:///drawn"],
    realUri: (asked) => asked,
    planFiles: () => [uri],
  };
  const checker = createChecker(workspace, { sandbox: sharedSandbox });
  try {
    const outcome = await checker.check(uri);
    if (outcome.state !== "checked") throw new Error(`the plan is ${outcome.state}`);
    return outcome.judgement;
  } finally {
    await checker.dispose();
  }
}

/** Draws in this thread; fails if no picture results. */
export async function drawn(plan: Judgement, options: Partial<DrawingOptions> = {}): Promise<Drawing> {
  const outcome = await drawDiagram(plan, { view: "wiring", medium: "paper", ...options }, layOut);
  if (!outcome.drawn) throw new Error(outcome.why);
  return outcome.drawing;
}

function importsTheLibrary(file: string): boolean {
  return readFileSync(join(house, file), "utf8").includes('from "loomwright"');
}
