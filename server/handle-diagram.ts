import { type Connection, LSPErrorCodes, ResponseError } from "vscode-languageserver";
import { shownColours, shownNumbers } from "../library/documents/diagram/shown-numbers.ts";
import type { AnswerWiring } from "./answer-wiring.ts";
import type { EditorWorkspace } from "./editor-workspace.ts";
import { fileName } from "./evaluate/files/file-name.ts";
import { numberedWires } from "./evaluate/files/kept-numbers.ts";
import { diagram, scenarioNames, withoutPicture } from "./language/diagram.ts";
import { type Diagram, type DiagramParams, diagramMethod } from "./language/messages.ts";
import { planMeantBy, type ShownPlan, whyNothing } from "./open-plans.ts";
import type { Layouts } from "./output/layouts.ts";
import type { RequestGuard } from "./request-guard.ts";

/**
 * Answers requests for the diagram of a plan. A thread of its own lays it out, to keep answering a user who types. If several
 * requests for one plan wait for it, only the newest is drawn.
 */
export function answerDiagram(
  connection: Connection,
  { workspace, running }: AnswerWiring,
  guard: RequestGuard,
  layouts: Layouts,
): void {
  connection.onRequest(diagramMethod, (params: DiagramParams, token) =>
    guard(diagramMethod, params, token, async () => {
      const file = workspace.fromEditor(params.textDocument.uri);
      const { plans } = await running();
      const settled = await plans.settledOf(file);
      const plan = planMeantBy(file, settled);
      return plan ? draw(plan, params, workspace, layouts) : null;
    }),
  );
}

async function draw(
  { root, outcome, view: plan }: ShownPlan,
  { view, scenario, colours = false }: DiagramParams,
  workspace: EditorWorkspace,
  layouts: Layouts,
): Promise<Diagram> {
  if (!plan)
    return withoutPicture(
      workspace.client(root),
      { view, colours },
      whyNothing(outcome, "There is no drawing yet"),
    );
  const { judgement } = plan.plan;
  const chosen = scenario === undefined ? -1 : scenarioNames(judgement).indexOf(scenario);
  const shown = { view, colours, scenario: chosen < 0 ? undefined : chosen };
  const { numbered } = numberedWires(plan.plan, workspace);
  const { drawDiagram } = await import("../library/documents/diagram/draw-diagram.ts");
  const drawn = await drawDiagram(
    judgement,
    {
      ...{
        view,
        medium: "screen",
        title: fileName(root),
        numbers: shownNumbers(numbered),
      },
      ...(colours ? { colours: shownColours(numbered) } : {}),
      ...(shown.scenario === undefined ? {} : { scenario: shown.scenario }),
    },
    (graph) => layouts.layOut(graph, root),
  );
  if (drawn.drawn) return diagram(plan, shown, drawn.drawing);
  if (drawn.superseded) throw superseded();
  return withoutPicture(workspace.client(root), { view, colours }, drawn.why);
}

function superseded(): ResponseError<{ retriggerRequest: boolean }> {
  return new ResponseError(LSPErrorCodes.ServerCancelled, "A newer request took the place of this one.", {
    retriggerRequest: false,
  });
}
