import type { KeptNumbers } from "../../../library/documents/schedules/kept-numbers.ts";
import { type NumberedWires, numberWires } from "../../../library/documents/schedules/wire-numbers.ts";
import { readWireNumbers, wireNumbersFile } from "../../../library/documents/schedules/wire-numbers-file.ts";
import { type Wire, wiresOf } from "../../../library/documents/schedules/wires.ts";
import type { CheckedPlan } from "../checked-plan.ts";
import type { Uri, Workspace } from "../workspace.ts";

/**
 * The numbers of a checked plan's conductors, from the file beside its root: the only source of displayed numbers. If there is
 * none, because the plan was renamed, from the one file in its folder without a plan that knows most of its conductors; or `from`
 * the given file.
 */
export function numberedWires(
  { root, judgement }: Pick<CheckedPlan, "root" | "judgement">,
  workspace: Reading,
  from?: Uri,
): KeptPlanNumbers {
  const wires = wiresOf(judgement);
  const own = wireNumbersFile(root);
  const text = workspace.read(own)?.text;
  if (text !== undefined) return numberedBy(wires, text);
  const [found, another] =
    from === undefined ? orphans(own, workspace).filter((uri) => knowsMost(wires, uri, workspace)) : [from];
  if (found === undefined || another !== undefined) return numberedBy(wires, undefined);
  return { ...numberedBy(wires, workspace.read(found)?.text), takenFrom: found };
}

type Reading = Pick<Workspace, "read"> & Partial<Pick<Workspace, "leftOut">>;

interface KeptPlanNumbers {
  readonly numbered: NumberedWires;
  readonly kept: KeptNumbers;
  /** The file of another plan that they come from. */
  readonly takenFrom?: Uri;
}

function numberedBy(wires: readonly Wire[], text: string | undefined): KeptPlanNumbers {
  const kept = readWireNumbers(text);
  return { numbered: numberWires(wires, kept), kept };
}

/** Files of numbers in the same folder whose plan is gone. */
function orphans(own: Uri, workspace: Reading): readonly Uri[] {
  const folder = own.slice(0, own.lastIndexOf("/") + 1);
  return (workspace.leftOut?.().wireNumbers ?? []).filter((uri) => {
    if (!uri.startsWith(folder) || uri.slice(folder.length).includes("/")) return false;
    const stem = uri.replace(/\.wire-numbers\.txt$/, "");
    return !scriptEndings.some((ending) => workspace.read(`${stem}${ending}`));
  });
}

const scriptEndings = [".ts", ".mts", ".cts", ".tsx", ".js", ".mjs", ".cjs", ".jsx"];

/** More than half of its lines are conductors of the plan. */
function knowsMost(wires: readonly Wire[], uri: Uri, workspace: Reading): boolean {
  const { numbered, kept } = numberedBy(wires, workspace.read(uri)?.text);
  const active = kept.numbers.filter(({ retired }) => !retired).length;
  return kept.problems.length === 0 && 2 * numbered.wires.filter((one) => one.kept).length > active;
}
