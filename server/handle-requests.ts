import {
  type CancellationToken,
  CodeActionTriggerKind,
  type Connection,
  DocumentDiagnosticReportKind,
  LSPErrorCodes,
  ResponseError,
} from "vscode-languageserver";
import type { AnswerWiring } from "./answer-wiring.ts";
import type { Uri } from "./evaluate/workspace.ts";
import { answerBoards } from "./handle-boards.ts";
import { answerDiagram } from "./handle-diagram.ts";
import { answerDifference } from "./handle-difference.ts";
import { answerDocuments } from "./handle-documents.ts";
import { answerEnergy } from "./handle-energy.ts";
import { answerReport } from "./handle-report.ts";
import { codeActions } from "./language/code-actions.ts";
import { codeLens } from "./language/code-lens.ts";
import { completions, typedValue } from "./language/completions.ts";
import { documentSymbols } from "./language/document-symbols.ts";
import { hover, working } from "./language/hover.ts";
import { inlayHints } from "./language/inlay-hints.ts";
import { checkWorkspaceMethod, type WorkingParams, workingMethod } from "./language/messages.ts";
import { placeCompletions, typedPlace } from "./language/place-completions.ts";
import type { PlanInView } from "./language/plan-in-view.ts";
import { terminalCompletions, typedTerminal } from "./language/terminal-completions.ts";
import type { ShownPlan } from "./open-plans.ts";
import { createLayouts } from "./output/layouts.ts";
import { passedFile, planCheck } from "./plan-status.ts";
import { createRequestGuard, textChanged } from "./request-guard.ts";
import type { WorkReport } from "./work-report.ts";

/** Connects each request of the protocol to its feature. */
export function answerRequests(connection: Connection, wiring: AnswerWiring): void {
  const { workspace, refresher, settings, editor, running } = wiring;
  const guard = createRequestGuard((text) => connection.console.error(text));

  /** The plans of a file, for exactly the requested text version. */
  const settledOf = async (file: Uri): Promise<PlanInView[]> => {
    const { version } = workspace.client(file);
    const { plans, work } = await running();
    const settled = await plans.settledOf(file);
    if (workspace.client(file).version !== version) throw textChanged();
    return viewsOf(settled, work);
  };

  /** Answers without waiting, from the newest complete result; waits only if there is none yet. */
  const answerAndRefresh = async <T>(
    kind: "hints" | "lenses",
    file: Uri,
    answer: (view: PlanInView) => T[],
  ): Promise<T[]> => {
    const { plans, work } = await running();
    if (plans.knownOf(file).some(({ outcome }) => outcome === undefined)) await plans.settledOf(file);
    const again = () => distinct(viewsOf(plans.knownOf(file), work).flatMap(answer));
    refresher.answered(kind, file, workspace.client(file).version, again);
    return again();
  };

  connection.onHover((params, token) =>
    guard("textDocument/hover", params, token, async () => {
      const uri = workspace.fromEditor(params.textDocument.uri);
      for (const view of await settledOf(uri)) {
        const answer = hover(view, uri, params.position);
        if (answer) return answer;
      }
      return null;
    }),
  );

  connection.onCodeAction((params, token) =>
    guard("textDocument/codeAction", params, token, async () => {
      const uri = workspace.fromEditor(params.textDocument.uri);
      const views = await settledOf(uri);
      const { checker } = await running();
      const request = {
        uri,
        range: params.range,
        only: params.context.only,
        automatic: params.context.triggerKind === CodeActionTriggerKind.Automatic,
        editor: editor(),
      };
      const actions = await Promise.all(views.map((view) => codeActions(view, checker, request)));
      // Proving fixes takes time; proofs for an outdated text are useless.
      return views.every((view) => view.current) ? distinct(actions.flat()) : [];
    }),
  );

  connection.onCompletion((params, token) =>
    guard("textDocument/completion", params, token, async () => {
      const uri = workspace.fromEditor(params.textDocument.uri);
      const document = workspace.document(uri);
      const text = document?.getText() ?? "";
      const offset = document?.offsetAt(params.position) ?? 0;
      const place = typedPlace(text, offset);
      if (document && place) {
        const { checker } = await running();
        const positionAt = document.positionAt.bind(document);
        return placeCompletions({ ...{ text, offset, positionAt }, typed: place, places: checker.places });
      }
      const [value, terminal] = [typedValue(text, offset), typedTerminal(text, offset)];
      if (!document || !(value || terminal)) return null;
      const { checker, plans, work } = await running();
      const positions = document.positionAt.bind(document);
      for (const root of await plans.rootsOf(uri)) {
        work.goesOn(root);
        const request = { checker, root, uri, text, positionAt: positions };
        const items = value
          ? await completions({ ...request, typed: value })
          : await terminalCompletions({ ...request, typed: terminal! });
        if (document.getText() !== text) throw textChanged();
        if (items.length > 0) return items;
      }
      return null;
    }),
  );

  connection.onDocumentSymbol((params, token) =>
    guard("textDocument/documentSymbol", params, token, async () => {
      const uri = workspace.fromEditor(params.textDocument.uri);
      return distinct((await settledOf(uri)).flatMap((view) => documentSymbols(view, uri)));
    }),
  );

  connection.onCodeLens((params, token) =>
    guard("textDocument/codeLens", params, token, () => {
      const uri = workspace.fromEditor(params.textDocument.uri);
      return answerAndRefresh("lenses", uri, (view) => codeLens(view, uri));
    }),
  );

  connection.languages.inlayHint.on((params, token) =>
    guard("textDocument/inlayHint", params, token, async () => {
      if (!settings().inlayHints) return [];
      const uri = workspace.fromEditor(params.textDocument.uri);
      return answerAndRefresh("hints", uri, (view) => inlayHints(view, uri, params.range));
    }),
  );

  connection.languages.diagnostics.on((params, token) =>
    guard("textDocument/diagnostic", params, token, async () => {
      const { delivery } = await running();
      const answer = await delivery.pull(
        workspace.fromEditor(params.textDocument.uri),
        params.previousResultId,
      );
      switch (answer.kind) {
        case "full":
          return { kind: DocumentDiagnosticReportKind.Full, resultId: answer.id, items: answer.items };
        case "unchanged":
          return { kind: DocumentDiagnosticReportKind.Unchanged, resultId: answer.id };
        case "nothing-yet":
          throw new ResponseError(LSPErrorCodes.ServerCancelled, "The text is half typed.", {
            retriggerRequest: false,
          });
        case "outdated":
          throw new ResponseError(LSPErrorCodes.ServerCancelled, "The text changed meanwhile.", {
            retriggerRequest: true,
          });
      }
    }),
  );

  // The token comes last, after optional parameters of the client.
  connection.onRequest(checkWorkspaceMethod, (...given: [CancellationToken] | [unknown, CancellationToken]) =>
    guard(checkWorkspaceMethod, {}, given.at(-1) as CancellationToken, async () => {
      const { plans } = await running();
      const checked = await plans.checkWorkspace();
      const passedBy = plans.passedBy().map(passedFile);
      return { plans: checked.map((plan) => planCheck(plan, workspace)), passedBy };
    }),
  );

  connection.onRequest(workingMethod, (params: WorkingParams, token: CancellationToken) =>
    guard(workingMethod, params, token, async () => {
      const uri = workspace.fromEditor(params.textDocument.uri);
      for (const view of await settledOf(uri)) {
        const answer = working(view, uri, params.position);
        if (answer) return answer;
      }
      return null;
    }),
  );

  // One thread lays out for the panel and for reports; the drawing code is loaded on the first request.
  const layouts = createLayouts();
  answerDiagram(connection, wiring, guard, layouts);
  answerReport(connection, wiring, guard, layouts);
  answerDocuments(connection, wiring, guard, layouts);
  answerDifference(connection, wiring, guard);
  answerEnergy(connection, wiring, guard);
  answerBoards(connection, wiring, guard);
}

function viewsOf(plans: readonly ShownPlan[], work: WorkReport): PlanInView[] {
  return plans.flatMap(({ root, view }) => {
    work.goesOn(root);
    return view ? [view] : [];
  });
}

/** Two plans that share a file may give the same item; it is shown once. */
function distinct<T>(items: readonly T[]): T[] {
  return [...new Map(items.map((item) => [JSON.stringify(item), item])).values()];
}
