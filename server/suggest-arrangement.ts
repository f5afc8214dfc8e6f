import type { CancellationToken } from "vscode-languageserver";
import { bestOf, type NewFindings, newWith } from "../library/documents/suggested-places.ts";
import type { CheckedPlan } from "./evaluate/checked-plan.ts";
import { placingOf } from "./language/board-places.ts";
import { boardsView } from "./language/boards-view.ts";
import type { ArrangementAnswer, ArrangementParams, TriedPlace } from "./language/messages.ts";
import type { PlanInView } from "./language/plan-in-view.ts";
import { type FoundPlaces, factsOfPlaces, findPlaces } from "./language/suggested-arrangement.ts";
import { isOfVersions } from "./language/versions-in-view.ts";
import type { Trials } from "./tried-edits.ts";

const notMade = "No arrangement is suggested";
const none = (why: string): ArrangementAnswer => ({ state: "none", message: `${notMade}: ${why}.` });
const changed = none("the text changed meanwhile");

/**
 * Suggests places, of which the whole plan was judged as its text would be: no error and no warning is new with them. A cancelled
 * request, or an edit, ends the search.
 */
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
  const tried: (NewFindings & { readonly places: readonly TriedPlace[]; readonly after: CheckedPlan })[] = [];
  for (const [index, places] of found.arrangements.entries()) {
    report(`Checking the plan with places: ${index + 1} of ${found.arrangements.length}.`);
    const asked = { view, versions, notMade, changeIn: () => placingOf(plan, layout, places) };
    const made = await trials.triedEdits(asked, token);
    if (made.state === "dropped") return { state: "none", message: made.message };
    tried.push({ places, after: made.plan, ...newWith(plan.judgement, made.plan.judgement) });
  }
  const best = bestOf(tried);
  if (!best) return { state: "none", message: found.none(tried) };
  const { places, after } = best;
  return {
    state: "suggested",
    places,
    facts: factsOfPlaces(plan, after, { places, leftOut: found.leftOut }),
    boards: boardsView(view, { conductors, tried: after }),
  };
}

/** Undefined if the text changed, or the request was cancelled. */
async function searched(
  view: PlanInView,
  on: number,
  token: CancellationToken,
  report: (progress: string) => void,
): Promise<FoundPlaces | undefined> {
  const search = findPlaces(view.plan, on, (uri) => view.client(uri).version !== null);
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
