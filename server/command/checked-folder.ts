import { dirname } from "node:path";
import { fileURLToPath } from "node:url";
import type { CheckOutcome } from "../evaluate/checked-plan.ts";
import type { Checker, createChecker } from "../evaluate/checker.ts";
import { PlanRoots } from "../evaluate/files/plan-roots.ts";
import type { RunOutcome } from "../evaluate/sandbox/contract.ts";
import type { createSandbox, Sandbox } from "../evaluate/sandbox.ts";
import type { FileImports } from "../evaluate/text/file-imports.ts";
import type { PassedBy, SourceText, Unread, Uri, Workspace } from "../evaluate/workspace.ts";
import type { CheckCache } from "./check-cache.ts";
import { planSchema, type ReportedPlan } from "./report-schema.ts";
import { reportPlan } from "./reported-plan.ts";

/** The plans of one project folder, and the result of `check` for each: from an earlier run if that gives the same result. */
export class CheckedFolder {
  /**
   * The files as they were when first read. A result is therefore kept under the texts that were really checked, even if the
   * files change meanwhile; and each file is read from disk once.
   */
  readonly workspace: Workspace;
  /** A question has no answer yet, because the parser is not loaded and no earlier run has read some text. */
  missed = false;
  readonly #cache: CheckCache | undefined;
  readonly #planRoots: PlanRoots;
  readonly #sandbox: Sandbox | undefined;
  #work: Work | undefined;

  /** If `tools` is undefined, they are loaded when first needed. */
  constructor(disk: Workspace, cache: CheckCache | undefined, tools: Tools | undefined, sandbox?: Sandbox) {
    this.workspace = readOnce(disk);
    this.#cache = cache;
    this.#sandbox = sandbox;
    this.#planRoots = new PlanRoots(this.workspace, (source) => this.#importsOf(source));
    if (tools) this.#work = workIn(this.workspace, tools, sandbox);
  }

  roots(): readonly Uri[] {
    return this.#planRoots.roots();
  }

  rootsOf(file: Uri): readonly Uri[] {
    return this.#planRoots.rootsOf(file);
  }

  passedBy(): readonly PassedBy[] {
    return this.#planRoots.passedBy();
  }

  whyNot(file: Uri): PassedBy | undefined {
    return this.#planRoots.whyNot(file);
  }

  /** Files are named relative to the folder of the plan's root, independent of where the command runs. */
  async check(root: Uri): Promise<ReportedPlan> {
    const key = await this.#keyOf(root);
    const kept = key === undefined ? undefined : this.#cache?.read(key);
    if (kept) return kept;
    const work = await this.#loaded();
    work.stoppedByChance = false;
    const { checker } = work;
    const from = { workspace: this.workspace, checker };
    const outcome = await checker.check(root);
    if (isUnread(outcome)) work.stoppedByChance = true;
    const found = await reportPlan(outcome, from, dirname(fileURLToPath(root)));
    // Keeps only the report of each plan until the end.
    checker.forget(root);
    // Goes through JSON text, as a kept result does: the two are then indistinguishable.
    const { data: plan } = planSchema.safeParse(JSON.parse(JSON.stringify(found)));
    if (!plan) return found;
    if (key !== undefined && !work.stoppedByChance) await this.#cache?.write(key, plan);
    return plan;
  }

  async close(): Promise<void> {
    await this.#cache?.close();
    await this.#work?.checker.dispose();
  }

  async #keyOf(root: Uri): Promise<string | undefined> {
    const ask = () => this.#cache?.keyOf(root, this.workspace, (source) => this.#importsOf(source));
    const key = ask();
    if (!this.missed) return key;
    await this.#loaded();
    this.missed = false;
    return ask();
  }

  #importsOf(source: SourceText): FileImports {
    const known = this.#cache?.importsOf(source);
    if (known) return known;
    if (!this.#work) {
      this.missed = true;
      return { broken: false, outOfTime: false, lines: [], callsForLibrary: false };
    }
    const imports = this.#work.checker.importsOf(source);
    this.#cache?.keepImports(source, imports);
    return imports;
  }

  async #loaded(): Promise<Work> {
    this.#work ??= workIn(this.workspace, await loadTools(), this.#sandbox);
    return this.#work;
  }
}

function readOnce(workspace: Workspace): Workspace {
  const sources = new Map<Uri, SourceText | undefined>();
  const real = new Map<Uri, Uri>();
  const unread = new Map<Uri, Unread | undefined>();
  return {
    read(uri) {
      if (!sources.has(uri)) sources.set(uri, workspace.read(uri));
      return sources.get(uri);
    },
    realUri(uri) {
      const known = real.get(uri) ?? workspace.realUri(uri);
      real.set(uri, known);
      return known;
    },
    folders: () => workspace.folders(),
    planFiles: () => workspace.planFiles(),
    leftOut: () => workspace.leftOut?.() ?? { passedBy: [], wireNumbers: [] },
    unread(uri) {
      if (!unread.has(uri)) unread.set(uri, workspace.unread?.(uri));
      return unread.get(uri);
    },
  };
}

/** Loaded only if something has to be computed: TypeScript alone takes longer than all the rest. */
export interface Tools {
  readonly createChecker: typeof createChecker;
  readonly createSandbox: typeof createSandbox;
}

export async function loadTools(): Promise<Tools> {
  const [{ createChecker }, { createSandbox }] = await Promise.all([
    import("../evaluate/checker.ts"),
    import("../evaluate/sandbox.ts"),
  ]);
  return { createChecker, createSandbox };
}

interface Work {
  readonly checker: Checker;
  /**
   * A limit stopped a run or the parsing of a text. The limit met first, and the progress by then, may differ on another machine,
   * or on this one at another time.
   */
  stoppedByChance: boolean;
}

function workIn(workspace: Workspace, { createChecker, createSandbox }: Tools, sandbox?: Sandbox): Work {
  const watched = watching(sandbox ?? createSandbox(), ({ end }) => {
    if (end !== "whole" && end.why !== "error") work.stoppedByChance = true;
  });
  const work: Work = { checker: createChecker(workspace, { sandbox: watched }), stoppedByChance: false };
  return work;
}

/** The same text may be parsed in time at another time or on another machine. */
function isUnread(outcome: CheckOutcome): boolean {
  return (
    outcome.state === "checked" &&
    outcome.judgement.problems.some((problem) => "reason" in problem && problem.reason === "reading-too-slow")
  );
}

function watching(sandbox: Sandbox, see: (outcome: RunOutcome) => void): Sandbox {
  return {
    async run(request) {
      const outcome = await sandbox.run(request);
      see(outcome);
      return outcome;
    },
    dispose: () => sandbox.dispose(),
  };
}
