import realm from "bundled-text:./inside/realm.ts";
import wordsText from "bundled-text:./inside/words.ts";
import type {
  QuickJSContext,
  QuickJSHandle,
  QuickJSRuntime,
  QuickJSWASMModule,
} from "quickjs-emscripten-core";
import { words } from "../../../library/model/record.ts";
import type { End, RunRequest, Stopped } from "./contract.ts";
import type { EngineMemory } from "./engine-memory.ts";
import type { Thrown } from "./inside/describe-thrown.ts";
import { bunchText } from "./read-records.ts";
import type { PageWriter } from "./record-pages.ts";
import { oneLine, placeInStack } from "./thrown.ts";
import { startTimeLimit } from "./time-limit.ts";

/** A fresh QuickJS runtime and context, made before the plan arrives; valid for one plan. */
export interface PlanRealm {
  /** Runs the plan to its end. Throws only the host's own errors: the WebAssembly instance may then be spoilt. */
  run(request: RunRequest): End;
  dispose(): void;
}

export function createRealm(
  quickjs: QuickJSWASMModule,
  memory: EngineMemory,
  records: PageWriter,
): PlanRealm {
  const runtime = quickjs.newRuntime({ maxStackSizeBytes: stackBytes });
  const context = runtime.newContext();
  const state: RunState = { limits: undefined, linked: false, stop: undefined, over: false, made: 0 };
  context
    .newFunction("emit", (values, used, made) => {
      // Copying the data takes memory, even if the plan has left none.
      const { limitBytes } = memory;
      memory.limitBytes += answerBytes;
      try {
        const numbers = numbersIn(context, inside, context.getNumber(used));
        const text = bunchText(numbers, context.getString(values));
        return emit(text, context.getNumber(made), records, state) ? context.true : context.false;
      } finally {
        memory.limitBytes = limitBytes;
      }
    })
    .consume((handle) => context.setProp(context.global, "emit", handle));
  context
    .newFunction("linked", () => {
      state.linked = true;
    })
    .consume((handle) => context.setProp(context.global, "linked", handle));
  loadOwnModules(runtime);
  const inside = context.unwrapResult(context.evalCode(realm, realmName, { type: "module" }));
  context.unwrapResult(context.evalCode(nameMarks, "loomwright/marks", { type: "global" })).dispose();
  context.unwrapResult(context.evalCode(recordingWords, "loomwright", { type: "module" })).dispose();

  return {
    run(request) {
      records.reset();
      return run({ runtime, context, inside, request, state, memory });
    },
    dispose() {
      inside.dispose();
      context.dispose();
      runtime.dispose();
    },
  };
}

/**
 * Enough for honest recursion, and far from the end of the host's own stack; overflowing that would spoil the WebAssembly
 * instance.
 */
const stackBytes = 256 * 1024;

const realmName = "loomwright/realm";

/** Constants of the global scope: no properties of the global object, so a plan can neither list, replace nor delete them. */
const nameMarks = `
const { enter: __enter, leave: __leave, open: __open, awaited: __awaited, watched: __watched, literal: __literal, literals: __literals, self: __self, unused: __unused, written: __written } = globalThis.marks;
delete globalThis.marks;`;

/** The module that a plan imports: the DSL functions, in their recording form. */
const recordingWords = `
import * as words from "loomwright/words";
const { recorded, setNumbering } = globalThis;
delete globalThis.recorded;
delete globalThis.setNumbering;
setNumbering(words.continueNumberingAt);
${words.map((word, place) => `export const ${word} = recorded(${place}, "${word}", words.${word});`).join("\n")}`;

/**
 * All modules of a plan are found and linked before the first of them is evaluated. This one is evaluated first and ends the
 * importing.
 */
const sayLinked = "globalThis.linked(); delete globalThis.linked;";

interface RunState {
  /** The plan is already running; only `import()` can still request a module. */
  linked: boolean;
  limits: RunRequest["limits"] | undefined;
  /** The reason why the plan must stop. Set by the host, out of a plan's reach; later actions of the plan do not change it. */
  stop: "time" | "memory" | "records" | undefined;
  /** The plan has ended, and its context is being inspected. */
  over: boolean;
  /** Records so far. */
  made: number;
}

interface RunInProgress {
  readonly runtime: QuickJSRuntime;
  readonly context: QuickJSContext;
  readonly inside: QuickJSHandle;
  readonly request: RunRequest;
  readonly state: RunState;
  readonly memory: EngineMemory;
}

/** A copy of the first numbers written by the recorder. */
function numbersIn(context: QuickJSContext, inside: QuickJSHandle, used: number): Float64Array {
  return context
    .getProp(inside, "memory")
    .consume((handle) =>
      context
        .getArrayBuffer(handle)
        .consume(
          ({ value }) => new Float64Array(value.slice(0, used * Float64Array.BYTES_PER_ELEMENT).buffer),
        ),
    );
}

/** Stores the recorder's output; true when the plan must stop. */
function emit(lines: string, made: number, records: PageWriter, state: RunState): boolean {
  const { limits } = state;
  if (limits === undefined) return true;
  records.write(lines);
  state.made = made;
  if (state.over) return false;
  if (made > limits.records) state.stop ??= "records";
  if (records.bytes > limits.memoryBytes) state.stop ??= "memory";
  return state.stop !== undefined;
}

function loadOwnModules(runtime: QuickJSRuntime) {
  runtime.setModuleLoader((name) =>
    name === "loomwright/words" ? wordsText : { error: new Error(`no module ${name}`) },
  );
}

function run(running: RunInProgress): End {
  const { runtime, context, memory, request, state } = running;
  const { limits } = request;
  state.limits = limits;
  loadPlanModules(running);
  memory.limitBytes = limits.memoryBytes;
  const isOver = startTimeLimit(limits.timeMs);
  runtime.setInterruptHandler(() => {
    if (state.stop === undefined && isOver()) state.stop = "time";
    return state.stop !== undefined;
  });

  const entry = `import "loomwright/linked";import ${JSON.stringify(request.root)};`;
  const evaluated = context.evalCode(entry, "loomwright/entry", { type: "module" });
  const end = evaluated.error
    ? evaluated.error.consume((thrown) => whyStopped(thrown, running))
    : evaluated.value.consume((module) => settle(module, running));
  beginInspection(running);
  const flushed = callInside(running, "flush");
  flushed?.dispose();
  if (end !== "whole") return end;
  if (state.made > limits.records) return { why: "records" };
  // A plan with a part missing must not pass for the whole one.
  return flushed
    ? "whole"
    : { why: "error", began: true, message: "its records could not be read completely", call: -1 };
}

/**
 * Loads only the plan's modules, and only while they are linked: the host has already resolved the text of each import, so no
 * other module can be reached, and `import()` fails.
 */
function loadPlanModules({ runtime, request, state }: RunInProgress) {
  const modules = new Map(request.modules.map((module) => [module.uri, module]));
  const leadsTo = (base: string, requested: string): string | undefined => {
    if (state.linked) return undefined;
    if (base === "loomwright/entry") return requested;
    const imports = modules.get(base)?.imports ?? {};
    return Object.hasOwn(imports, requested) ? imports[requested] : undefined;
  };
  runtime.setModuleLoader(
    (name) => {
      if (name === "loomwright/linked") return sayLinked;
      // Refused here, not in the normaliser below: after a refusal there, this engine requests a module without a name.
      return modules.get(name)?.js ?? { error: new Error(refusal(name, state)) };
    },
    (base, requested) => leadsTo(base, requested) ?? `${refused}${requested}`,
  );
}

const refused = "refused:";

function refusal(name: string, { linked }: RunState): string {
  if (linked) return "a plan cannot import anything while it runs; use an import at the top of the file";
  return `"${name.startsWith(refused) ? name.slice(refused.length) : name}" cannot be imported`;
}

/** Runs the plan's promises, one job at a time, until no job is left. */
function settle(module: QuickJSHandle, running: RunInProgress): End {
  const { runtime, context, state } = running;
  for (;;) {
    const settled = context.getPromiseState(module);
    if (settled.type === "rejected") return settled.error.consume((thrown) => whyStopped(thrown, running));
    if (settled.type === "fulfilled" && !settled.notAPromise) settled.value.dispose();
    if (state.stop !== undefined) return { why: state.stop };
    if (!runtime.hasPendingJob())
      return passedOver(running) ?? (settled.type === "pending" ? waiting : "whole");
    callInside(running, "forgetOpenCalls")?.dispose();
    const worked = runtime.executePendingJobs(1);
    if (worked.error) return worked.error.consume((thrown) => whyStopped(thrown, running));
  }
}

/**
 * The first reason why a part of a plan that seems to have ended did not run: an error in a promise that no part of the plan waits
 * for, or on the console, or a promise that is waited for and never settles.
 */
function passedOver(running: RunInProgress): Stopped | undefined {
  const { context } = running;
  const isTrue = (name: string) =>
    callInside(running, name)?.consume((handle) => context.dump(handle) === true) ?? false;
  for (;;) {
    const promise = callInside(running, "takePromise");
    if (promise === undefined || context.typeof(promise) === "undefined") break;
    const state = promise.consume((handle) => context.getPromiseState(handle));
    const isAwaited = isTrue("isTakenAwaited");
    if (state.type === "fulfilled" && !state.notAPromise) state.value.dispose();
    if (state.type === "rejected") {
      if (isAwaited) state.error.dispose();
      else return state.error.consume((thrown) => whyStopped(thrown, running));
    }
    if (state.type === "pending" && isAwaited) {
      const place = callInside(running, "placeOfTaken");
      const at = place?.consume((error) => describe(error, running).at);
      return { ...waiting, ...(at ? { at } : {}) };
    }
  }
  if (!isTrue("hasReported")) return undefined;
  return callInside(running, "reportedError")?.consume((thrown) => whyStopped(thrown, running));
}

const waiting = {
  why: "error",
  began: true,
  message: "the plan waits for something that never happens",
  call: -1,
} as const;

/** The plan threw, or was interrupted. */
function whyStopped(thrown: QuickJSHandle, running: RunInProgress): Stopped {
  const { context, state } = running;
  const { message, at } = describe(thrown, running);
  const call = callInside(running, "indexOfOpenCall")?.consume((handle) => context.getNumber(handle)) ?? -1;
  const where = { ...(at ? { at } : {}), call };
  if (state.stop !== undefined) return { why: state.stop, ...where };
  const outOfMemory = message === "InternalError: out of memory" || (message === "null" && isFull(running));
  return outOfMemory
    ? { why: "memory", ...where }
    : { why: "error", began: state.linked, message: oneLine(message), ...where };
}

function describe(thrown: QuickJSHandle, running: RunInProgress) {
  beginInspection(running);
  const described = callInside(running, "describeThrown", thrown)?.consume((handle) =>
    running.context.getString(handle),
  );
  const [message, stack] = described ? (JSON.parse(described) as Thrown) : unreadable;
  return { message, at: placeInStack(stack, running.request.modules) };
}

/** The plan has ended. Inspecting its context may run a little of it again (a proxy's traps), for a limited time. */
function beginInspection({ runtime, memory, state }: RunInProgress) {
  if (state.over) return;
  state.over = true;
  memory.limitBytes = memory.bytes + answerBytes;
  runtime.setInterruptHandler(startTimeLimit(100));
}

/** Extra memory for inspection, in case the plan has used up its own. */
const answerBytes = 16 * 1024 * 1024;

const unreadable: Thrown = ["an error that cannot be read", ""];

/** When memory is too short even to create the error, `null` is thrown instead. A plan may throw `null` too. */
function isFull({ memory, request }: RunInProgress): boolean {
  return memory.bytes > request.limits.memoryBytes * 0.8;
}

function callInside(
  { context, inside }: RunInProgress,
  name: string,
  ...given: QuickJSHandle[]
): QuickJSHandle | undefined {
  const result = context
    .getProp(inside, name)
    .consume((handle) => context.callFunction(handle, context.undefined, ...given));
  if (result.error === undefined) return result.value;
  result.error.dispose();
  return undefined;
}
