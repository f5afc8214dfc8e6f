import { setImmediate as nextTurn } from "node:timers/promises";
import { Worker } from "node:worker_threads";
import type { End, RunOutcome, RunRequest, Stopped } from "./contract.ts";
import { readRecords } from "./read-records.ts";
import { newPage, readPages } from "./record-pages.ts";
import { startTimeLimit } from "./time-limit.ts";
import type { FromWorker, ToWorker, WorkerStart } from "./worker-messages.ts";

/** The time limit for a worker to start on a busy machine. */
const startMs = 30_000;

/** A plan stops itself at its time limit, if the engine checks the clock at all. The worker is killed this much later. */
const graceMs = 300;

/**
 * One worker thread. It starts at once, runs one plan at a time, and keeps the process alive only during a run. Once it was
 * killed, died, or may be spoilt, it is not used again.
 */
export class PlanRunner {
  readonly #worker: Worker;
  readonly #firstPage = newPage();
  #pages = [this.#firstPage];
  /** Resolves once a fresh context waits for a plan, or the worker is spent. */
  #prepared = new Settled<"ready" | "spent">();
  #running: Settled<End> | undefined;
  #whySpent: Stopped | undefined;

  constructor(workerFile: URL | string) {
    this.#worker = new Worker(workerFile, {
      workerData: { firstPage: this.#firstPage } satisfies WorkerStart,
      env: {},
      execArgv: [],
      stdin: false,
      stdout: true,
      stderr: true,
      // QuickJS has memory of its own; this limits the worker's own memory for handing records over.
      resourceLimits: { maxOldGenerationSizeMb: 192, maxYoungGenerationSizeMb: 32, stackSizeMb: 8 },
    });
    this.#worker.unref();
    this.#worker.on("message", (message: FromWorker) => this.#hear(message));
    this.#worker.on("error", (error) => this.#fail(error.message));
    this.#worker.on("exit", () => this.#fail("the worker that runs plans has ended"));
  }

  get whySpent(): Stopped | undefined {
    return this.#whySpent;
  }

  get usable(): boolean {
    return this.#whySpent === undefined;
  }

  /**
   * Resolves with the plan's end and the records made before it; with undefined if the worker was spent before it could begin.
   */
  async run(request: RunRequest): Promise<RunOutcome | undefined> {
    this.#worker.ref();
    try {
      const prepared = await this.#prepared.within(startMs);
      if (prepared === undefined) this.#fail("the worker that runs plans did not start");
      if (prepared !== "ready" || !this.usable) return undefined;
      this.#prepared = new Settled();
      this.#pages = [this.#firstPage];
      const running = new Settled<End>();
      this.#running = running;
      this.#worker.postMessage(request satisfies ToWorker);
      const end = await this.#endOf(running, request.limits.timeMs);
      return { end, ...readRecords(readPages(this.#pages), request.limits.records) };
    } finally {
      this.#running = undefined;
      this.#worker.unref();
      if (!this.usable) await this.kill();
    }
  }

  async kill(): Promise<void> {
    this.#fail("the sandbox was closed");
    await this.#worker.terminate();
  }

  #hear(message: FromWorker) {
    switch (message.kind) {
      case "page":
        this.#pages.push(message.page);
        return;
      case "ready":
        this.#prepared.settle("ready");
        return;
      case "ended":
        if (!message.reusable) this.#spend({ why: "failed", message: "its worker may be spoilt" });
        this.#running?.settle(message.end);
    }
  }

  /** Some of the engine's own functions never check the clock: joining a thousand million texts, for example. */
  async #endOf(running: Settled<End>, limitMs: number): Promise<End> {
    const isOver = startTimeLimit(limitMs);
    for (let waitMs = limitMs + graceMs; ; waitMs = graceMs) {
      const end = await running.within(waitMs);
      if (end !== undefined) return end;
      if (!isOver()) continue;
      const stopped: Stopped = { why: "time" };
      this.#spend(stopped);
      return stopped;
    }
  }

  #fail(message: string) {
    const failed: Stopped = { why: "failed", message };
    this.#spend(failed);
    this.#running?.settle(failed);
  }

  #spend(why: Stopped) {
    this.#whySpent ??= why;
    this.#prepared.settle("spent");
  }
}

/** A value that is set once; the first one counts. */
class Settled<Value> {
  #value: Value | undefined;
  #wake: () => void = () => {};

  settle(value: Value) {
    this.#value ??= value;
    this.#wake();
  }

  /** Undefined if it is not set in that time. */
  async within(limitMs: number): Promise<Value | undefined> {
    if (this.#value !== undefined) return this.#value;
    let timer: NodeJS.Timeout | undefined;
    await new Promise<void>((resolve) => {
      this.#wake = resolve;
      timer = setTimeout(resolve, limitMs);
    });
    clearTimeout(timer);
    // If this thread itself was blocked, the timer fires before a message that arrived long ago.
    if (this.#value === undefined) await nextTurn();
    return this.#value;
  }
}
