import type { KeptNumbers } from "../../../library/documents/schedules/kept-numbers.ts";
import { type NumberedWires, numberWires } from "../../../library/documents/schedules/wire-numbers.ts";
import { readWireNumbers, wireNumbersFile } from "../../../library/documents/schedules/wire-numbers-file.ts";
import { wiresOf } from "../../../library/documents/schedules/wires.ts";
import type { CheckedPlan } from "../checked-plan.ts";
import type { Workspace } from "../workspace.ts";

/** The numbers of a checked plan's conductors, from the file beside its root: the only source of displayed numbers. */
export function numberedWires(
  { root, judgement }: Pick<CheckedPlan, "root" | "judgement">,
  workspace: Pick<Workspace, "read">,
): { readonly numbered: NumberedWires; readonly kept: KeptNumbers } {
  const kept = readWireNumbers(workspace.read(wireNumbersFile(root))?.text);
  return { numbered: numberWires(wiresOf(judgement), kept), kept };
}
