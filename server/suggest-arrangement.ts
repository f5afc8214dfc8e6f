import type { CancellationToken } from "vscode-languageserver";
import { placingOf } from "./language/board-places.ts";
import { boardsView } from "./language/boards-view.ts";
import type { ArrangementAnswer, ArrangementParams } from "./language/messages.ts";
import type { PlanInView } from "./language/plan-in-view.ts";
import { type FoundPlaces, factsOfPlaces, findPlaces } from "./language/suggested-arrangement.ts";
import { isOfVersions } from "./language/versions-in-view.ts";
import type { Trials } from "./tried-edits.ts";

const notMade = "No arrangement is suggested";
const none = (why: string): ArrangementAnswer => ({ state: "none", message: `${notMade}: ${why}.` });
const changed = none("the text changed meanwhile");

/** Suggests places and judges the plan with them, as its text would be. A cancelled request, or an edit, ends the search. */
export async function suggestArrangement(
  trials: Trials,
  view: PlanInView,
  { versions, on, conductors = false }: ArrangementParams,
  { token, report }: { readonly token: CancellationToken; report(progress: string): void },
): Promise<ArrangementAnswer> {
  if (!isOfVersions(view, versions)) return changed;
  if (!view.current) return none("the text is half typed");
  const found = await searched(view, on, token, report);
  if (!found) return changed;
  if (found.state === "none") return found;
  const { plan } = view;
  const { layout } = plan.judgement.placement!;
  const asked = { view, versions, notMade, changeIn: () => placingOf(plan, layout, found.places) };
  const tried = await trials.triedEdits(asked, token);
  if (tried.state === "dropped") return { state: "none", message: tried.message };
  return {
    state: "suggested",
    places: found.places,
    facts: factsOfPlaces(plan, tried.plan, found),
    boards: boardsView(view, { conductors, tried: tried.plan }),
  };
}

/** Undefined if the text changed, or the request was cancelled. */
async function searched(
  view: PlanInView,
  on: number,
  token: CancellationToken,
  report: (progress: string) => void,
): Promise<FoundPlaces | undefined> {
  const search = findPlaces(view.plan, on);
  let reported = "";
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
    if (step.value !== reported) report(step.value);
    reported = step.value;
    // Messages that wait are heard between two steps: an edit, or a cancellation.
    await new Promise<void>((resume) => setImmediate(resume));
    if (token.isCancellationRequested || !view.current) return undefined;
  }
}
