import { posix } from "node:path";
import { drawDiagram } from "../../library/documents/diagram/draw-diagram.ts";
import type { View } from "../../library/documents/diagram/drawing.ts";
import type { LayOut } from "../../library/documents/diagram/graph.ts";
import { shownNumbers } from "../../library/documents/diagram/shown-numbers.ts";
import type { ReportEdition, ReportFinding, ReportInput } from "../../library/documents/report/chapter.ts";
import { reportContent } from "../../library/documents/report/report.ts";
import type { ReportContent } from "../../library/documents/report/report-content.ts";
import { reportHtml } from "../../library/documents/report/report-html.ts";
import { benchDocuments } from "../../library/documents/schedules/bench-documents.ts";
import { version } from "../../library/package.json";
import type { CheckedPlan, SourceRange } from "../evaluate/checked-plan.ts";
import { numberedWires } from "../evaluate/files/kept-numbers.ts";
import type { Workspace } from "../evaluate/workspace.ts";
import type { PageSize } from "./page-size.ts";

/**
 * The report of a plan that ran to its end, as the bytes of its file. Rejects with the reason of `signal`, and only with that.
 * The same texts, page and version give the same bytes.
 */
export async function planReport(asked: AskedReport): Promise<MadeReport> {
  const { kind, page, signal } = asked;
  const content = await planReportContent(asked);
  signal?.throwIfAborted();
  if (kind === "html") return { bytes: new TextEncoder().encode(reportHtml(content)), missing: [] };
  // The typeface and the PDF code are loaded only if needed.
  const { reportPdf } = await import("../output/paper.ts");
  return reportPdf(content, { page, signal });
}

/** The report as data, before it is set. */
export async function planReportContent(asked: ReportedPlan): Promise<ReportContent> {
  asked.signal?.throwIfAborted();
  return reportContent(await reportInput(asked));
}

export interface AskedReport extends ReportedPlan {
  readonly kind: "html" | "pdf";
  readonly page: PageSize;
}

interface ReportedPlan {
  readonly edition: ReportEdition;
  /** For the facts of the plan and the title blocks; left out: none is shown. */
  readonly revision?: string;
  readonly plan: CheckedPlan;
  readonly workspace: Pick<Workspace, "read">;
  readonly layOut: LayOut;
  readonly signal?: AbortSignal | undefined;
}

export interface MadeReport {
  readonly bytes: Uint8Array;
  /** Characters that the typeface lacks, each drawn as an empty box. */
  readonly missing: readonly string[];
}

/** The kind of file that a name's ending asks for; undefined for any other. */
export function reportKind(path: string): AskedReport["kind"] | undefined {
  const [, ending] = /\.(html|pdf)$/i.exec(path) ?? [];
  return ending?.toLowerCase() as AskedReport["kind"] | undefined;
}

async function reportInput(asked: ReportedPlan): Promise<ReportInput> {
  const { edition, revision, plan, workspace, layOut, signal } = asked;
  const stated = revision === undefined ? {} : { revision };
  const { judgement, root } = plan;
  const { numbered, kept } = numberedWires(plan, workspace);
  const file = nameOf(root, root);
  // Before the first wait: the texts may change afterwards.
  const findings = plan.findings.map(({ finding, subjects, message, place }): ReportFinding => {
    const { rule, severity, accepted, followsFrom } = finding;
    return {
      ...{ rule, severity, subjects, message, place: lineInWords(place, root, workspace) },
      ...(accepted === undefined ? {} : { accepted }),
      ...(followsFrom && { followsFrom }),
    };
  });
  const drawings: ReportInput["drawings"][number][] = [];
  const views = viewsOf[edition];
  for (const [index, view] of views.entries()) {
    const options = {
      view,
      medium: "paper",
      title: file,
      numbers: shownNumbers(numbered),
      ...stated,
      ...(views.length > 1 ? { sheet: { number: index + 1, of: views.length } } : {}),
    } as const;
    drawings.push({ view, outcome: await drawDiagram(judgement, options, layOut) });
    signal?.throwIfAborted();
  }
  return {
    edition,
    ...stated,
    madeBy: `Loomwright ${version}`,
    file,
    judgement,
    findings,
    drawings,
    schedules: benchDocuments(judgement, numbered),
    notices: kept.problems.map(({ line, text }) => `Wire numbers, line ${line}: ${text}`),
  };
}

/** At the bench, a conductor is looked up by its ends. */
const viewsOf: Readonly<Record<ReportEdition, readonly View[]>> = {
  inspector: ["one-line", "wiring"],
  bench: ["wiring"],
};

/** "power.ts:14", relative to the folder of the root. */
function lineInWords({ uri, start }: SourceRange, root: string, workspace: Pick<Workspace, "read">): string {
  const before = workspace.read(uri)?.text.slice(0, start) ?? "";
  return `${nameOf(uri, root)}:${before.split(/\r\n|\n|\r/).length}`;
}

function nameOf(uri: string, root: string): string {
  const path = (of: string) => decodeURIComponent(new URL(of).pathname);
  return posix.relative(posix.dirname(path(root)), path(uri)) || posix.basename(path(root));
}
