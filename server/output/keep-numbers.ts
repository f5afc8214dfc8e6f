import { fileURLToPath } from "node:url";
import type { KeptNumbers } from "../../library/documents/schedules/kept-numbers.ts";
import { canBeKept, type NumberedWires } from "../../library/documents/schedules/wire-numbers.ts";
import { wireNumbersFile, writeWireNumbers } from "../../library/documents/schedules/wire-numbers-file.ts";
import type { CheckedPlan } from "../evaluate/checked-plan.ts";
import type { Workspace } from "../evaluate/workspace.ts";
import { type Written, writeWhole } from "./atomic-write.ts";

/** The text that would be kept beside a plan, and whether it differs from the one that is there. */
export interface NumbersToKeep {
  readonly uri: string;
  readonly before: string | undefined;
  readonly text: string;
  readonly changes: boolean;
}

export function numbersToKeep(
  { root }: Pick<CheckedPlan, "root">,
  workspace: Pick<Workspace, "read">,
  { numbered, kept }: { readonly numbered: NumberedWires; readonly kept: KeptNumbers },
): NumbersToKeep {
  const uri = wireNumbersFile(root);
  const before = workspace.read(uri)?.text;
  const text = writeWireNumbers(numbered, kept);
  const hasAny = numbered.wires.some(({ identity }) => canBeKept(identity));
  return {
    uri,
    before,
    text,
    changes: before?.replaceAll("\r\n", "\n") !== text && (before !== undefined || hasAny),
  };
}

/** Writes them beside the plan. The text that was read may be overwritten: the new one contains every line of it. */
export function keepNumbers({ uri, before, text }: NumbersToKeep): Promise<Written> {
  const isOurs = (found: Uint8Array) => withoutMark(Buffer.from(found).toString("utf8")) === before;
  return writeWhole(fileURLToPath(uri), text, { force: false, isOurs });
}

function withoutMark(text: string): string {
  return text.replace(/^\uFEFF/, "");
}

/** A conductor that could not be read would look removed, and its number would be retired. */
export function whyNotNumbered(
  { judgement }: Pick<CheckedPlan, "judgement">,
  { problems }: KeptNumbers,
): readonly { readonly line?: number; readonly text: string }[] {
  const { networkUnread, unjudged, withoutCircuits } = judgement.model;
  const [unreadCircuit] = [...unjudged, ...withoutCircuits];
  if (problems.length > 0) return problems;
  if (networkUnread || unreadCircuit) {
    const unread = networkUnread ? "the network" : `"${unreadCircuit!.name}"`;
    return [
      {
        text: `${unread} cannot be read, so its conductors are unknown: loomwright check reports the reason.`,
      },
    ];
  }
  return [];
}
