import { setImmediate as nextTurn } from "node:timers/promises";
import { Worker } from "node:worker_threads";
import type { RunOutcome, RunRequest, Stopped } from "../sandbox.ts";
import { readRecords } from "./read-records.ts";
import { newPage, readPages } from "./record-pages.ts";
import { startTimeLimit } from "./time-limit.ts";
import type { FromWorker, ToWorker, WorkerStart } from "./worker-messages.ts";

/** How long a worker may take to start, on a machine that is busy with much else. */
const startMs = 30_000;

/** A plan stops itself at its time limit, if the engine looks at the clock at all. How much later the worker is killed. */
const graceMs = 300;

type State = "preparing" | "ready" | "running" | "spent";

/**
 * One worker thread. It starts at once, runs one plan at a time, and keeps the process alive only meanwhile. Once it had to
 * be killed, died, or may be spoilt, it is spent.
 */
export class PlanRunner {
  readonly #worker: Worker;
  readonly #firstPage = newPage();
  #pages = [this.#firstPage];
  #state: State = "preparing";
  #stopped: Stopped | undefined;
  #changed: () => void = () => {};

  constructor(workerFile: URL | string) {
    this.#worker = new Worker(workerFile, {
      workerData: { firstPage: this.#firstPage } satisfies WorkerStart,
      env: {},
      execArgv: [],
      stdin: false,
      stdout: true,
      stderr: true,
      // QuickJS has memory of its own; this bounds what the worker itself takes to hand records over.
      resourceLimits: { maxOldGenerationSizeMb: 192, maxYoungGenerationSizeMb: 32, stackSizeMb: 8 },
    });
    this.#worker.unref();
    this.#worker.on("message", (message: FromWorker) => {
      if (message.kind === "page") this.#pages.push(message.page);
      else if (message.kind === "ready") this.#become("ready");
      else this.#become(message.reusable ? "preparing" : "spent", message.stopped);
    });
    this.#worker.on("error", (error) => this.#fail(error.message));
    this.#worker.on("exit", () => this.#fail("the worker that runs plans has ended"));
  }

  /** Why it is spent. */
  get stopped(): Stopped | undefined {
    return this.#stopped;
  }

  get usable(): boolean {
    return this.#state !== "spent";
  }

  /**
   * Resolves with what stopped the plan, if anything did, and the records made before that; with undefined if the worker was
   * spent before it could begin.
   */
  async run(request: RunRequest): Promise<RunOutcome | undefined> {
    this.#worker.ref();
    try {
      if (!(await this.#leaves("preparing", startMs))) this.#fail("the worker that runs plans did not start");
      if (this.#state !== "ready") return undefined;
      this.#pages = [this.#firstPage];
      this.#become("running");
      this.#worker.postMessage(request satisfies ToWorker);
      // Some of the engine's own functions never look at the clock: joining a thousand million texts, say.
      const longestMs = request.limits.timeMs + graceMs;
      const isOver = startTimeLimit(request.limits.timeMs);
      for (let waitMs = longestMs; !(await this.#leaves("running", waitMs)); waitMs = graceMs) {
        if (isOver()) this.#become("spent", { why: "time" });
      }
      return {
        ...readRecords(readPages(this.#pages), request.limits.records),
        ...(this.#stopped ? { stopped: this.#stopped } : {}),
      };
    } finally {
      this.#worker.unref();
      if (!this.usable) await this.kill();
    }
  }

  async kill(): Promise<void> {
    this.#fail("the sandbox was closed");
    await this.#worker.terminate();
  }

  #become(state: State, stopped?: Stopped) {
    if (this.#state === "spent") return;
    this.#state = state;
    this.#stopped = stopped;
    this.#changed();
  }

  #fail(message: string) {
    this.#become("spent", { why: "failed", message });
  }

  /** Waits for another state; false if it is the same after that time. */
  async #leaves(state: State, withinMs: number): Promise<boolean> {
    if (this.#state !== state) return true;
    let timer: NodeJS.Timeout | undefined;
    await new Promise<void>((resolve) => {
      this.#changed = resolve;
      timer = setTimeout(resolve, withinMs);
    });
    clearTimeout(timer);
    // Where this thread itself was held up, the timer comes before the message that has long been there.
    if (this.#state === state) await nextTurn();
    return this.#state !== state;
  }
}
