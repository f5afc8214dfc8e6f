import { wireNumbersFile } from "../../library/documents/schedules/wire-numbers-file.ts";
import type { CheckedPlan } from "../evaluate/checked-plan.ts";
import type { numberedWires } from "../evaluate/files/kept-numbers.ts";
import { shownFile } from "./checked-plans.ts";
import type { Host } from "./host.ts";
import { printable } from "./terminal.ts";

/** Reports each line of a wire-numbers file that could not be read: a document shows its wires without their numbers. */
export function reportUnreadNumbers(
  plan: CheckedPlan,
  { problems }: ReturnType<typeof numberedWires>["kept"],
  outside: Host,
): void {
  const numbers = shownFile(wireNumbersFile(plan.root), outside.cwd);
  for (const { line, text } of problems)
    outside.err(
      `loomwright: ${printable(`${numbers}:${line}: ${text}`)} Numbers may be missing here until then.\n`,
    );
}
