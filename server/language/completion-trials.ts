import type { Position } from "vscode-languageserver-types";
import type { CheckedPlan } from "../evaluate/checked-plan.ts";
import type { Checker } from "../evaluate/checker.ts";
import type { Uri } from "../evaluate/workspace.ts";

/** A request for the values that fit at a place where one is being typed. */
export interface CompletionRequest<Typed extends TypedText> {
  readonly root: Uri;
  readonly uri: Uri;
  /** The editor's text, and the value being typed in it. */
  readonly text: string;
  readonly typed: Typed;
  readonly checker: Pick<Checker, "checkAs">;
  positionAt(offset: number): Position;
}

/** Offsets of the text typed so far; empty if there is none. */
interface TypedText {
  readonly start: number;
  readonly end: number;
}

/**
 * The plan with a stand-in for the value being typed: the engine that checks plans then finds the record and the effect of each
 * choice, even while the value is still empty. First with the value alone; then, for brackets not closed yet, with those closed
 * that are open before it. Texts that are still not whole are left out.
 */
export async function* trials(
  { root, uri, text, typed, checker }: CompletionRequest<TypedText>,
  standIn: string,
  closings: readonly string[],
): AsyncGenerator<CheckedPlan, void> {
  const before = text.slice(0, typed.start) + standIn;
  const after = text.slice(typed.end);
  for (const trial of [before + after, ...closings.map((closing) => `${before}${closing};${after}`)]) {
    const outcome = await checker.checkAs(root, new Map([[uri, trial]]));
    if (outcome.state === "checked") yield outcome;
  }
}
