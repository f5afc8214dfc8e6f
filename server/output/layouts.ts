import { Worker } from "node:worker_threads";
import type { DiagramGraph, LaidOut } from "../../library/documents/diagram/graph.ts";

/** Lays out diagrams in a separate thread, to keep the calling thread responsive. */
export interface Layouts {
  /**
   * Never rejects. Among the requests waiting under one key only the newest is kept; an older one is answered as superseded. A
   * layout that has begun is finished.
   */
  layOut(graph: DiagramGraph, key?: string): Promise<LaidOut>;
  /** Answers the waiting requests as not laid out. */
  dispose(): Promise<void>;
}

export interface ToLayoutWorker {
  readonly graph: DiagramGraph;
}

export interface FromLayoutWorker {
  readonly laidOut: LaidOut;
}

/**
 * Starts lazily: the first diagram starts the worker, which then stays warm. If a worker dies or does not answer in time, its
 * diagram fails, and the next one gets another worker. A recently laid out graph is not laid out again.
 */
export function createLayouts(options: LayoutOptions = {}): Layouts {
  const workerFile = options.workerFile ?? new URL("../dist/layout-worker.cjs", import.meta.url);
  const setTimer = options.setTimer ?? timerOf;
  const recent = new Map<string, LaidOut>();
  const waiting: Waiting[] = [];
  let worker: Worker | undefined;
  let running: Waiting | undefined;
  let stopWatching: () => void = () => {};
  let closed = false;

  const finish = (laidOut: LaidOut) => {
    const done = running;
    if (!done) return;
    stopWatching();
    running = undefined;
    if (laidOut.laidOut) keep(recent, done.text, laidOut);
    done.answer(laidOut);
    next();
  };

  const giveUp = (spent: Worker, why: string) => {
    if (worker !== spent) return;
    worker = undefined;
    void spent.terminate();
    finish({ laidOut: false, why });
  };

  const start = () => {
    const fresh = new Worker(workerFile, { env: {}, execArgv: [], stdin: false, stdout: true, stderr: true });
    fresh.on("message", ({ laidOut }: FromLayoutWorker) => {
      if (worker === fresh) finish(laidOut);
    });
    fresh.on("error", (error) => giveUp(fresh, `The diagram could not be laid out: ${firstLine(error)}`));
    fresh.on("exit", () => giveUp(fresh, "The diagram could not be laid out: its thread has ended."));
    return fresh;
  };

  const next = () => {
    if (running) return;
    running = waiting.shift();
    if (!running) return worker?.unref();
    worker ??= start();
    worker.ref();
    const busy = worker;
    stopWatching = setTimer(patienceMs, () =>
      giveUp(busy, `The diagram could not be laid out within ${patienceMs / 1000} seconds.`),
    );
    busy.postMessage({ graph: running.graph } satisfies ToLayoutWorker);
  };

  return {
    layOut(graph, key) {
      if (closed) return Promise.resolve(notLaidOut);
      const text = JSON.stringify(graph);
      const known = recent.get(text);
      if (known) return Promise.resolve(known);
      return new Promise((answer) => {
        const older = key === undefined ? -1 : waiting.findIndex((one) => one.key === key);
        if (older !== -1) waiting.splice(older, 1)[0]!.answer({ ...notLaidOut, superseded: true });
        waiting.push({ graph, text, key, answer });
        next();
      });
    },
    async dispose() {
      closed = true;
      for (const { answer } of waiting.splice(0)) answer(notLaidOut);
      const last = worker;
      if (last) giveUp(last, notLaidOut.why);
      await last?.terminate();
    },
  };
}

export interface LayoutOptions {
  readonly workerFile?: URL | string;
  /** Calls back after that time, unless the returned function was called before. For tests. */
  readonly setTimer?: (ms: number, callBack: () => void) => () => void;
}

interface Waiting {
  readonly graph: DiagramGraph;
  /** The graph as text; the same text gives the same layout. */
  readonly text: string;
  readonly key: string | undefined;
  answer(laidOut: LaidOut): void;
}

/** A diagram of 1,000 conductors takes some seconds on a slow machine. */
const patienceMs = 30_000;

/** As many as two views of a few plans with a handful of scenarios. */
const mostRecent = 12;
/** Of the graphs as text, in UTF-16 units: a diagram of thousands of conductors is not kept at all. */
const mostRecentLength = 4_000_000;

const notLaidOut = {
  laidOut: false,
  why: "The diagram was not laid out: another request took its place, or Loomwright was closed.",
} as const;

/** Removes the oldest ones first. */
function keep(recent: Map<string, LaidOut>, text: string, laidOut: LaidOut): void {
  recent.delete(text);
  recent.set(text, laidOut);
  let length = [...recent.keys()].reduce((sum, graph) => sum + graph.length, 0);
  for (const graph of recent.keys()) {
    if (recent.size <= mostRecent && length <= mostRecentLength) break;
    recent.delete(graph);
    length -= graph.length;
  }
}

function timerOf(ms: number, callBack: () => void): () => void {
  const timer = setTimeout(callBack, ms);
  timer.unref();
  return () => clearTimeout(timer);
}

function firstLine(error: unknown): string {
  return (error instanceof Error ? error.message : String(error)).split("\n")[0]!;
}
