import { type StatusParams, statusMethod } from "../language/messages.ts";
import type { Engine } from "./engines.ts";

/**
 * The engine that owns each finding and state shown in the editor. A plan may move from one engine to another. The one that
 * releases it clears its own findings, and must not clear those of the other one. The findings of an ended engine are removed
 * when the others are at rest and have not replaced them.
 */
export interface Owners {
  findings(engine: Engine, params: { readonly uri: string; readonly diagnostics: readonly unknown[] }): void;
  /** Passes a state on to the editor; false if it was out of date. */
  status(engine: Engine, status: StatusParams): boolean;
  ended(engine: Engine): void;
  /** An engine has no more plans to check; `onDuty` are the current engines. */
  atRest(engine: Engine, onDuty: readonly (Engine | undefined)[]): void;
}

export function createOwners(notifyEditor: (method: string, params: object) => void): Owners {
  const findings = new Map<string, Set<Engine>>();
  const statuses = new Map<string, Set<Engine>>();
  const gone = new Set<Engine>();
  const rested = new Set<Engine>();

  const hold = (owners: Map<string, Set<Engine>>, uri: string, engine: Engine) => {
    owners.set(uri, (owners.get(uri) ?? new Set()).add(engine));
  };

  /** False if another engine still shows something there. */
  const letGo = (owners: Map<string, Set<Engine>>, uri: string, engine: Engine): boolean => {
    const left = [...(owners.get(uri) ?? [])].filter((one) => one !== engine && !gone.has(one));
    if (left.length > 0) owners.set(uri, new Set(left));
    else owners.delete(uri);
    return left.length === 0;
  };

  const clearUp = () => {
    for (const [owners, clear] of [
      [findings, clearFindings],
      [statuses, clearStatus],
    ] as const) {
      for (const [uri, engines] of owners) {
        const left = [...engines].filter((engine) => !gone.has(engine));
        owners.set(uri, new Set(left));
        if (left.length > 0) continue;
        owners.delete(uri);
        clear(uri);
      }
    }
    gone.clear();
  };

  const clearFindings = (uri: string) => notifyEditor(pushed, { uri, diagnostics: [] });
  const clearStatus = (uri: string) =>
    notifyEditor(statusMethod, { uri, state: "gone", message: "no longer a plan" } satisfies StatusParams);

  return {
    findings(engine, params) {
      if (params.diagnostics.length > 0) hold(findings, params.uri, engine);
      else if (!letGo(findings, params.uri, engine)) return;
      notifyEditor(pushed, params);
    },
    status(engine, status) {
      if (status.uri !== undefined) {
        if (status.state !== "gone") hold(statuses, status.uri, engine);
        else if (!letGo(statuses, status.uri, engine)) return false;
      }
      notifyEditor(statusMethod, status);
      return true;
    },
    ended(engine) {
      gone.add(engine);
      rested.delete(engine);
    },
    atRest(engine, onDuty) {
      rested.add(engine);
      if (gone.size > 0 && onDuty.every((one) => one === undefined || rested.has(one))) clearUp();
    },
  };
}

const pushed = "textDocument/publishDiagnostics";
