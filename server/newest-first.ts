import { LSPErrorCodes, ResponseError } from "vscode-languageserver";

/**
 * Lets one piece of work at a time run for each plan; of those that wait only the newest is ever started, and the ones that it
 * replaces are answered with the protocol's own error. Work for one plan never waits for another's.
 */
export interface NewestFirst {
  run<T>(plan: string, work: () => Promise<T>): Promise<T>;
}

export function createNewestFirst(): NewestFirst {
  const lanes = new Map<string, Lane>();
  return {
    async run(plan, work) {
      const lane: Lane = lanes.get(plan) ?? { busy: false, waiting: undefined };
      lanes.set(plan, lane);
      if (lane.busy) await turnIn(lane);
      lane.busy = true;
      try {
        return await work();
      } finally {
        lane.busy = false;
        const next = lane.waiting;
        lane.waiting = undefined;
        if (next) {
          // Taken before anybody else can ask, so that two never run at once.
          lane.busy = true;
          next.start();
        } else lanes.delete(plan);
      }
    },
  };
}

interface Lane {
  busy: boolean;
  waiting: { start(): void; replaced(error: Error): void } | undefined;
}

function turnIn(lane: Lane): Promise<void> {
  lane.waiting?.replaced(superseded());
  return new Promise((start, replaced) => {
    lane.waiting = { start, replaced };
  });
}

function superseded(): ResponseError<{ retriggerRequest: boolean }> {
  return new ResponseError(LSPErrorCodes.ServerCancelled, "A newer request took the place of this one.", {
    retriggerRequest: false,
  });
}
