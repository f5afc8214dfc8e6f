import { isSamePlainData } from "../same-plain-data.ts";
import type { Sandbox } from "../sandbox.ts";
import type { RawRecord, RunModule, RunOutcome, RunRequest } from "./contract.ts";

/**
 * Runs a plan only if its JavaScript differs from the last run. A plan has no clock and no chance, so the same JavaScript makes
 * the same records. Most edits change a figure in a call that is `__written`, and the JavaScript does not contain that figure.
 * After another run, inputs that are as before are the same objects: callers cache by their identity.
 */
export function memoisedSandbox(sandbox: Sandbox): MemoisedSandbox {
  const last = new Map<string, { readonly request: RunRequest; readonly outcome: RunOutcome }>();
  return {
    async run(request) {
      const before = last.get(request.root);
      if (before && isSameRun(before.request, request)) return before.outcome;
      const ran = await sandbox.run(request);
      const outcome = before
        ? { ...ran, records: withKnownInputs(ran.records, before.outcome.records) }
        : ran;
      // A stopped run may have been stopped because the machine was busy.
      if (outcome.end === "whole") last.set(request.root, { request, outcome });
      return outcome;
    },
    forget(root) {
      last.delete(root);
    },
    dispose() {
      last.clear();
      return sandbox.dispose();
    },
  };
}

export interface MemoisedSandbox extends Sandbox {
  /** Drops the outcome of this plan's last run. */
  forget(root: string): void;
}

function withKnownInputs(records: readonly RawRecord[], before: readonly RawRecord[]): readonly RawRecord[] {
  return records.map((record, index) => {
    const known = before[index]?.input;
    return known !== undefined && isSamePlainData(known, record.input) ? { ...record, input: known } : record;
  });
}

function isSameRun(one: RunRequest, other: RunRequest): boolean {
  return (
    isSameRecord(one.limits, other.limits) &&
    one.modules.length === other.modules.length &&
    one.modules.every((module, index) => isSameModule(module, other.modules[index]!))
  );
}

function isSameModule(one: RunModule, other: RunModule): boolean {
  return one.uri === other.uri && one.js === other.js && isSameRecord(one.imports, other.imports);
}

function isSameRecord(one: object, other: object): boolean {
  const [entries, others] = [Object.entries(one), Object.entries(other)];
  return (
    entries.length === others.length &&
    entries.every(([name, value], index) => name === others[index]![0] && value === others[index]![1])
  );
}
