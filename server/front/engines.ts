import type { Message, NotificationMessage } from "vscode-languageserver/node";
import {
  atRestMethod,
  type Duty,
  dutyMethod,
  type GivenUp,
  pingMethod,
  pongMethod,
  type Quick,
  quickMethod,
  readyMethod,
  type WorkingOn,
  workingOnMethod,
} from "../engine-messages.ts";
import type { Uri } from "../evaluate/workspace.ts";
import type { EngineEvents, EngineThread } from "./engine-thread.ts";
import { type EngineWatch, watchEngine } from "./engine-watch.ts";

/**
 * The engines on duty. The foreground engine has the plans of open files and must stay quick; the background engine has those
 * that are slow or not open. An engine that does not answer is ended and replaced: a plan that blocked the foreground engine
 * moves to the background, and one that blocked even the background engine is given up until its text changes.
 */
export interface Engines {
  readonly foreground: Engine;
  /** Undefined until it has work. */
  readonly background: Engine | undefined;
  /** The background engine; starts it if necessary. */
  startBackground(): Engine;
  /** A plan is no longer shown: when reopened, it counts as quick again. */
  forget(root: Uri): void;
  /** A formerly slow plan is now shown by the foreground engine. */
  movedToForeground(root: Uri): void;
  end(): void;
}

export interface Engine {
  readonly number: number;
  send(message: Message): void;
}

export interface EnginesWiring {
  startThread(number: number, events: EngineEvents): EngineThread;
  /** The messages that a new engine must get before all others. */
  replay(): readonly Message[];
  /** An engine sent a message that is not about engines. */
  received(engine: Engine, message: Message): void;
  /** `next` has replaced `ended`, because of the plan with these open files, if known. */
  replaced(ended: Engine, next: Engine, role: Duty["role"], because: WorkingOn | undefined): void;
  /** Engines end so often that the cause must be something else. */
  hopeless(why: string): void;
  log(text: string): void;
  readonly limitsMs: Readonly<Record<Duty["role"], number>>;
  /** Time from the first rest of the first engine to the start of a spare one; it starts at once if that engine is slow. */
  readonly spareAfterMs: number;
}

export function createEngines(wiring: EnginesWiring): Engines {
  const { startThread, replay, received, replaced, hopeless, log, limitsMs, spareAfterMs } = wiring;
  const slow = new Set<Uri>();
  /** The number of times that each plan has blocked the foreground engine. */
  const demotions = new Map<Uri, number>();
  const givenUp = new Map<Uri, GivenUp>();
  /** Plans that are quick again; the background engine keeps them until the foreground engine shows them. */
  const moving = new Set<Uri>();
  let count = 0;
  let failures: number[] = [];
  let over = false;

  const start = (): Running => {
    count++;
    const number = count;
    const thread = startThread(number, {
      received(message) {
        const { method, params } = message as NotificationMessage;
        if (method === readyMethod) engine.ready = true;
        else if (method === pongMethod) engine.watch?.answered();
        else if (method === workingOnMethod) engine.workingOn = params as unknown as WorkingOn;
        else if (method === quickMethod) moveToForeground((params as unknown as Quick).root);
        else {
          if (method === atRestMethod) prepareOthers(engine);
          received(engine, message);
        }
      },
      ended: (why) => failed(engine, why),
    });
    const engine: Running = {
      number,
      thread,
      ready: false,
      workingOn: undefined,
      watch: undefined,
      send(message) {
        thread.send(message);
        engine.watch?.busy();
      },
    };
    return engine;
  };

  /** When the foreground engine is at rest, others can start: the background engine, and a spare one, the first of them later. */
  const prepareOthers = (engine: Running): void => {
    if (engine !== foreground) return;
    if (slow.size > 0) background ??= appoint(takeSpare(), "background");
    const startSpare = () => {
      spare ??= start();
    };
    if (count > 1) startSpare();
    else spareTimer ??= setTimeout(startSpare, spareAfterMs).unref();
  };

  /** Gives an engine its role; until then it only loads and prepares itself. */
  const appoint = (engine: Running, role: Duty["role"]): Running => {
    const limitMs = limitsMs[role];
    engine.watch = watchEngine({
      limitMs,
      ping() {
        // While it loads, it cannot answer, and is not at fault.
        if (engine.ready) notify(engine.thread, pingMethod, {});
        else engine.watch?.answered();
      },
      slow() {
        if (role === "foreground") spare ??= start();
      },
      // A person waits for the foreground alone.
      isAnotherReady: () => role === "background" || spare?.ready === true,
      stuck: () => failed(engine, `it took more than ${limitMs / 1_000} s`),
    });
    notify(engine, dutyMethod, dutyOf(role));
    for (const message of replay()) engine.send(message);
    return engine;
  };

  const dutyOf = (role: Duty["role"]): Duty => ({
    role,
    slow: [...slow].filter((root) => role === "background" || !moving.has(root)),
    givenUp: [...givenUp.values()],
  });

  const sendDuties = () => {
    notify(foreground, dutyMethod, dutyOf("foreground"));
    if (background) notify(background, dutyMethod, dutyOf("background"));
  };

  const takeSpare = (): Running => {
    const engine = spare ?? start();
    spare = undefined;
    return engine;
  };

  const failed = (engine: Running, why: string): void => {
    engine.watch?.stop();
    engine.thread.end();
    if (over) return;
    if (engine === spare) {
      spare = undefined;
      return;
    }
    const { workingOn } = engine;
    log(`The engine was ended: ${why}${workingOn ? `, at work on ${workingOn.root}` : ""}.`);
    const now = performance.now();
    failures = [...failures.filter((at) => now - at < failuresWithinMs), now];
    if (failures.length > mostFailures) {
      hopeless(why);
      return;
    }
    const role = engine === foreground ? "foreground" : "background";
    if (workingOn && role === "foreground") demote(workingOn.root);
    if (workingOn && role === "background") giveUp(workingOn, why);
    const next = appoint(takeSpare(), role);
    if (role === "foreground") foreground = next;
    else background = next;
    sendDuties();
    replaced(engine, next, role, workingOn);
  };

  const demote = (root: Uri): void => {
    moving.delete(root);
    slow.add(root);
    demotions.set(root, (demotions.get(root) ?? 0) + 1);
  };

  const giveUp = ({ root, texts }: WorkingOn, why: string): void => {
    givenUp.set(root, { root, texts, why });
  };

  const moveToForeground = (root: Uri): void => {
    // A plan that is quick to edit and slow to open would move back and forth.
    if (!slow.has(root) || (demotions.get(root) ?? 0) > mostMoves) return;
    moving.add(root);
    notify(foreground, dutyMethod, dutyOf("foreground"));
  };

  let spare: Running | undefined;
  let spareTimer: NodeJS.Timeout | undefined;
  let background: Running | undefined;
  let foreground: Running = appoint(start(), "foreground");

  return {
    get foreground() {
      return foreground;
    },
    get background() {
      return background;
    },
    startBackground() {
      background ??= appoint(takeSpare(), "background");
      return background;
    },
    forget(root) {
      if (!slow.delete(root)) return;
      demotions.delete(root);
      moving.delete(root);
      sendDuties();
    },
    movedToForeground(root) {
      if (!moving.delete(root)) return;
      slow.delete(root);
      sendDuties();
    },
    end() {
      over = true;
      clearTimeout(spareTimer);
      for (const engine of [foreground, background, spare]) {
        engine?.watch?.stop();
        engine?.thread.end();
      }
    },
  };
}

interface Running extends Engine {
  readonly thread: EngineThread;
  /** It has loaded everything it needs. */
  ready: boolean;
  /** The last plan that it reported. */
  workingOn: WorkingOn | undefined;
  watch: EngineWatch | undefined;
}

/** A first reading may be slow by accident; a plan that was slow twice stays in the background until it is closed. */
const mostMoves = 1;

/** Each hostile file of a folder may end one engine. An engine that fails independently of plans fails again at once. */
const mostFailures = 20;
const failuresWithinMs = 60_000;

function notify(to: { send(message: Message): void }, method: string, params: object): void {
  to.send({ jsonrpc: "2.0", method, params } as Message);
}
