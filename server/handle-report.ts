import { basename } from "node:path";
import type { CancellationToken, Connection } from "vscode-languageserver";
import type { AnswerWiring } from "./answer-wiring.ts";
import { fileName } from "./evaluate/files/file-name.ts";
import type { Workspace } from "./evaluate/workspace.ts";
import { type ReportAnswer, type ReportParams, reportMethod } from "./language/messages.ts";
import { plainWords } from "./language/plain-words.ts";
import { planMeantBy, type ShownPlan, wholePlan } from "./open-plans.ts";
import { writeWhole } from "./output/atomic-write.ts";
import type { Layouts } from "./output/layouts.ts";
import type { RequestGuard } from "./request-guard.ts";

/** Answers requests for the report: makes it from the current texts, and writes it whole or not at all. */
export function answerReport(
  connection: Connection,
  { workspace, running }: AnswerWiring,
  guard: RequestGuard,
  layouts: Layouts,
): void {
  connection.onRequest<ReportAnswer, void>(reportMethod, (params: ReportParams, token: CancellationToken) =>
    guard(reportMethod, params, token, async () => {
      const stopping = new AbortController();
      const listening = token.onCancellationRequested(() => stopping.abort(new Error("Cancelled.")));
      try {
        const file = workspace.fromEditor(params.textDocument.uri);
        const { plans } = await running();
        const settled = await plans.borrowed(file);
        const plan = planMeantBy(file, settled);
        return await writeReport(plan, params, { workspace, layouts, signal: stopping.signal });
      } finally {
        listening.dispose();
      }
    }),
  );
}

interface Means {
  readonly workspace: Pick<Workspace, "read" | "folders">;
  readonly layouts: Layouts;
  readonly signal: AbortSignal;
}

async function writeReport(
  shown: ShownPlan | undefined,
  { path, page, revision, force, edition = "inspector" }: ReportParams,
  { workspace, layouts, signal }: Means,
): Promise<ReportAnswer> {
  const failed = (message: string): ReportAnswer => ({ state: "failed", message: plainWords(message) });
  const { planReport, reportKind } = await import("./output/plan-report.ts");
  const { revisionOf } = await import("./evaluate/git/plan-revision.ts");
  const kind = reportKind(path);
  if (!kind) return failed(`A report is a file that ends in .html or .pdf, not ${basename(path)}.`);
  const plan = wholePlan(shown, "report");
  if (typeof plan === "string") return failed(plan);
  const stated = await revisionOf(revision, plan, workspace);
  if ("why" in stated) return failed(`${fileName(plan.root)}: ${stated.why}; no report was written.`);
  const layOut: Layouts["layOut"] = (graph) => layouts.layOut(graph);
  const { bytes, missing } = await planReport({
    ...{ plan, workspace, edition, kind, page, layOut, signal },
    ...stated,
  });
  const written = await writeWhole(path, bytes, { force, signal });
  if (written.written) return { state: "written", path, missing: plainWords(missing.join(" ")) };
  if (written.notOurs !== undefined)
    return { state: "not-ours", message: plainWords(`${basename(path)} ${written.notOurs}.`) };
  return failed(`${basename(path)} ${written.why}; no report was written.`);
}
