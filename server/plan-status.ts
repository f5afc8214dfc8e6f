import type { EditorWorkspace } from "./editor-workspace.ts";
import { fileName, pathInWords } from "./evaluate/files/file-name.ts";
import { mayHideHazard } from "./evaluate/files/passed-by.ts";
import type { PassedBy } from "./evaluate/workspace.ts";
import { countsOf, planInWords } from "./language/counts.ts";
import type { PassedFile, PlanCheck, StatusParams } from "./language/messages.ts";
import { plainWords } from "./language/plain-words.ts";
import type { ShownPlan } from "./open-plans.ts";

/** The state of a plan, for the status bar; tests wait for it instead of for time to pass. */
export function statusOf(plan: ShownPlan, workspace: EditorWorkspace): StatusParams {
  const { state, message, counts, uri } = planCheck(plan, workspace);
  const { version } = workspace.client(plan.root);
  const { outcome } = plan;
  const versions: Record<string, number> = {};
  for (const file of outcome && outcome.state !== "failed" ? outcome.snapshot.keys() : [plan.root]) {
    const client = workspace.client(file);
    if (client.version !== null) versions[client.uri] = client.version;
  }
  return {
    uri,
    state,
    message,
    versions,
    ...(version === null ? {} : { version }),
    ...(counts ? { counts } : {}),
  };
}

/** The same for a check of the whole workspace. */
export function planCheck({ root, outcome, view }: ShownPlan, workspace: EditorWorkspace): PlanCheck {
  const { uri } = workspace.client(root);
  const counts = view && countsOf(view.plan);
  const inWords = view ? planInWords(view.plan) : "";
  if (outcome?.state === "checked") {
    return { uri, state: "idle", message: inWords, ...(counts ? { counts } : {}) };
  }
  if (outcome?.state === "incomplete") {
    const broken = `${plainWords(fileName(outcome.broken))} is half typed`;
    return {
      uri,
      state: "incomplete",
      message: counts ? `${inWords} as of the last complete text; ${broken}` : `not checked yet: ${broken}`,
      ...(counts ? { counts } : {}),
    };
  }
  return {
    uri,
    state: "failed",
    message: plainWords(`could not be checked: ${outcome?.reason ?? "no reason given"}`),
  };
}

/** The description of a file that was passed by, for the answer to a check of the workspace. */
export function passedFile(passed: PassedBy): PassedFile {
  const { uri, why } = passed;
  return { uri, message: plainWords(`${pathInWords(uri)} ${why}`), mayHideHazard: mayHideHazard(passed) };
}
