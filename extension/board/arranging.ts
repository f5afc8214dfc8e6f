import { CancellationTokenSource } from "vscode";
import type { ArrangementAnswer, arrangementMethod } from "../../server/language/messages.ts";
import { reasonOf } from "../command.ts";
import type { SearchPlan } from "../plan-view/plan-view.ts";
import type { ToPage } from "./messages.ts";

/** The search for places on a surface: one at a time, a newer one ends it. */
export interface Arranging {
  /** @param on Record of the surface. */
  suggest(on: number, conductors: boolean): Promise<void>;
  cancel(): void;
}

export function createArranging(search: SearchPlan, post: (message: ToPage) => void): Arranging {
  let asking: CancellationTokenSource | undefined;

  const answerTo = async (
    on: number,
    conductors: boolean,
    { token }: CancellationTokenSource,
  ): Promise<ArrangementAnswer> => {
    try {
      return await search<ArrangementAnswer>({
        method: "loomwright/arrangement" satisfies typeof arrangementMethod,
        params: { on, conductors },
        token,
        progress: (message) => post({ type: "searching", on, message }),
      });
    } catch (error) {
      const message = token.isCancellationRequested
        ? "The search for places was cancelled; the text is unchanged."
        : `No arrangement is suggested: ${reasonOf(error)}`;
      return { state: "none", message };
    }
  };

  return {
    async suggest(on, conductors) {
      asking?.cancel();
      const own = new CancellationTokenSource();
      asking = own;
      post({ type: "searching", on, message: "Looking for places." });
      const answer = await answerTo(on, conductors, own);
      own.dispose();
      if (asking !== own) return;
      asking = undefined;
      post({ type: "arrangement", on, answer });
    },
    cancel: () => asking?.cancel(),
  };
}
