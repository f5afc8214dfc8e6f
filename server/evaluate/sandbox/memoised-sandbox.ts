import { isSamePlainData } from "../../../library/model/same-plain-data.ts";
import type { Sandbox } from "../sandbox.ts";
import { type FindRow, runOfChangedRow, withRow } from "./changed-row.ts";
import type { RawRecord, RunOutcome, RunRequest } from "./contract.ts";

/**
 * Runs a plan only if its JavaScript differs from the last run. A plan has no clock and no chance, so the same JavaScript makes
 * the same records. Most edits change a figure in a call that is `__written`, and the JavaScript does not contain that figure.
 * If only one row of a list differs, and each row is independent of the others, the plan runs with that row alone.
 * After another run, inputs that are as before are the same objects: callers cache by their identity.
 */
export function memoisedSandbox(sandbox: Sandbox): MemoisedSandbox {
  const last = new Map<string, LastRun>();

  const runRow = async (request: RunRequest, before: LastRun, findRow: FindRow) => {
    const run = runOfChangedRow(before.request, request, findRow);
    return run && withRow(run, before.outcome, await sandbox.run(run.request));
  };

  const runWhole = async (request: RunRequest, before: LastRun | undefined) => {
    const ran = await sandbox.run(request);
    return before ? { ...ran, records: withKnownInputs(ran.records, before.outcome.records) } : ran;
  };

  return {
    async run(request, findRow) {
      const before = last.get(request.root);
      if (before && isSameRun(before.request, request)) return before.outcome;
      const isRowEnough = before?.rowsAreIndependent && findRow && isSameExceptText(before.request, request);
      const outcome =
        (isRowEnough && (await runRow(request, before, findRow))) || (await runWhole(request, before));
      // A stopped run may have been stopped because the machine was busy.
      if (outcome.end === "whole")
        last.set(request.root, { request, outcome, rowsAreIndependent: findRow !== undefined });
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

export interface MemoisedSandbox extends Omit<Sandbox, "run"> {
  /** `findRow`: given if the plan has no side effects. Called before the first pause, while the trees are those of the plan. */
  run(request: RunRequest, findRow?: FindRow): Promise<RunOutcome>;
  /** Drops the outcome of this plan's last run. */
  forget(root: string): void;
}

interface LastRun {
  readonly request: RunRequest;
  readonly outcome: RunOutcome;
  /** The plan had no side effects. */
  readonly rowsAreIndependent: boolean;
}

function withKnownInputs(records: readonly RawRecord[], before: readonly RawRecord[]): readonly RawRecord[] {
  return records.map((record, index) => {
    const known = before[index]?.input;
    return known !== undefined && isSamePlainData(known, record.input) ? { ...record, input: known } : record;
  });
}

function isSameRun(one: RunRequest, other: RunRequest): boolean {
  return (
    isSameExceptText(one, other) && one.modules.every(({ js }, index) => js === other.modules[index]!.js)
  );
}

function isSameExceptText(one: RunRequest, other: RunRequest): boolean {
  return (
    isSameRecord(one.limits, other.limits) &&
    one.modules.length === other.modules.length &&
    one.modules.every(({ uri, imports }, index) => {
      const { uri: otherUri, imports: otherImports } = other.modules[index]!;
      return uri === otherUri && isSameRecord(imports, otherImports);
    })
  );
}

function isSameRecord(one: object, other: object): boolean {
  const [entries, others] = [Object.entries(one), Object.entries(other)];
  return (
    entries.length === others.length &&
    entries.every(([name, value], index) => name === others[index]![0] && value === others[index]![1])
  );
}
