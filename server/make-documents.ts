import { basename, join } from "node:path";
import { pathToFileURL } from "node:url";
import { drawDiagram } from "../library/documents/diagram/draw-diagram.ts";
import { shownColours, shownNumbers } from "../library/documents/diagram/shown-numbers.ts";
import { drawFrontViews, drawTemplates } from "../library/documents/front-view/draw-front-view.ts";
import { benchDocuments } from "../library/documents/schedules/bench-documents.ts";
import { labelSheets } from "../library/documents/schedules/label-sheets.ts";
import { wireLabels } from "../library/documents/schedules/labels.ts";
import { tableCsv } from "../library/documents/table-csv.ts";
import { counted } from "../library/rules/wording/format-number.ts";
import { listInWords } from "../library/rules/wording/part-in-words.ts";
import type { CheckedPlan } from "./evaluate/checked-plan.ts";
import { fileName } from "./evaluate/files/file-name.ts";
import { numberedWires } from "./evaluate/files/kept-numbers.ts";
import { revisionOf } from "./evaluate/git/plan-revision.ts";
import { surfacesLeftOut } from "./evaluate/surfaces-left-out.ts";
import type { Workspace } from "./evaluate/workspace.ts";
import { scenarioNames } from "./language/diagram.ts";
import type { DocumentAnswer, DocumentParams } from "./language/messages.ts";
import { plainWords } from "./language/plain-words.ts";
import { makeNamedFolder, type Written, writeWhole } from "./output/atomic-write.ts";
import { frontViewsFile, templateKind, templatesFile } from "./output/board-files.ts";
import { drawingFile, drawingKind } from "./output/drawing-file.ts";
import { keepNumbers, numbersToKeep, whyNotNumbered } from "./output/keep-numbers.ts";
import type { Layouts } from "./output/layouts.ts";
import { fileNamesOf } from "./output/plan-file-names.ts";

interface Means {
  readonly workspace: Pick<Workspace, "read" | "folders" | "planFiles">;
  readonly layouts: Layouts;
  readonly signal: AbortSignal;
}

/** Writes one document of a plan that ran to its end. */
export function makeDocument(
  plan: CheckedPlan,
  params: DocumentParams,
  means: Means,
): Promise<DocumentAnswer> {
  return makers[params.document](plan, params, means);
}

type Maker = (plan: CheckedPlan, params: DocumentParams, means: Means) => Promise<DocumentAnswer>;

const makers: Readonly<Record<DocumentParams["document"], Maker>> = {
  async drawing(
    plan,
    { path = "", view = "wiring", scenario, colours, page, revision, force },
    { workspace, layouts, signal },
  ) {
    const kind = drawingKind(path);
    if (!kind) return failed(`A drawing is a file that ends in .svg, .png or .pdf, not ${basename(path)}.`);
    const index = scenario === undefined ? -1 : scenarioNames(plan.judgement).indexOf(scenario);
    if (scenario !== undefined && index < 0) return failed(`The plan has no scenario called ${scenario}.`);
    const stated = await revisionOf(revision, plan, workspace);
    if ("why" in stated) return failed(`${fileName(plan.root)}: ${stated.why}.`);
    const { numbered, kept } = numberedWires(plan, workspace);
    const outcome = await drawDiagram(
      plan.judgement,
      {
        ...{ view, medium: "paper", title: fileName(plan.root), ...stated },
        numbers: shownNumbers(numbered),
        ...(colours ? { colours: shownColours(numbered) } : {}),
        ...(index < 0 ? {} : { scenario: index }),
      },
      (graph) => layouts.layOut(graph),
    );
    if (!outcome.drawn) return failed(outcome.why);
    const { bytes, missing } = await drawingFile(outcome.drawing, kind, page);
    const note = notes(noteOfNumbers(kept), noteOfMissing(missing));
    return answerTo([await writeWhole(path, bytes, { force, signal })], note);
  },

  async boards(plan, { path = "", conductors = false, page, revision, force }, { workspace, signal }) {
    const kind = drawingKind(path);
    if (!kind)
      return failed(`Front views are a file that ends in .svg, .png or .pdf, not ${basename(path)}.`);
    const stated = await revisionOf(revision, plan, workspace);
    if ("why" in stated) return failed(`${fileName(plan.root)}: ${stated.why}.`);
    const { numbered, kept } = numberedWires(plan, workspace);
    const [first, ...others] = drawFrontViews(plan.judgement, {
      ...{ medium: "paper", title: fileName(plan.root), ...stated },
      ...{ numbers: shownNumbers(numbered), conductors },
    });
    if (!first) return failed(whyNoSurface(plan));
    if (others.length > 0 && kind !== "pdf") return failed(onlyPdf);
    const { bytes, missing } = await frontViewsFile([first, ...others], kind, page);
    const note = notes(noteOfLeftOut(plan), noteOfNumbers(kept), noteOfMissing(missing));
    return answerTo([await writeWhole(path, bytes, { force, signal })], note);
  },

  async templates(plan, { path = "", page = "A4", force }, { signal }) {
    const kind = templateKind(path);
    if (!kind)
      return failed(`Drilling templates are a file that ends in .pdf, .svg or .dxf, not ${basename(path)}.`);
    const [first, ...others] = drawTemplates(plan.judgement, fileName(plan.root));
    if (!first) return failed(whyNoSurface(plan));
    if (others.length > 0 && kind !== "pdf") return failed(onlyPdf);
    const content = await templatesFile([first, ...others], kind, page);
    if ("why" in content) return failed(`No drilling template was written: ${content.why}.`);
    const trueSize = kind === "pdf" ? "Print at actual size, and measure the bar on each sheet." : "";
    const note = notes(noteOfLeftOut(plan), trueSize, noteOfMissing(content.missing));
    return answerTo([await writeWhole(path, content.bytes, { force, signal })], note);
  },

  async labels(plan, { path = "", page = "A4", force }, { workspace, signal }) {
    if (!/\.pdf$/i.test(path)) return failed(`Labels are a file that ends in .pdf, not ${basename(path)}.`);
    const { numbered, kept } = numberedWires(plan, workspace);
    const labels = wireLabels(numbered.wires);
    if (labels.length === 0) return failed("The plan has no conductors, so there are no labels.");
    const sheet = labelSheets.find(({ paper }) => paper === page);
    if (!sheet) return failed(`Label sheets are A4 or Letter, not ${page}.`);
    const { labelPdf } = await import("./output/paper.ts");
    const { bytes, missing, cut } = await labelPdf(
      labels.map(({ lines }) => lines),
      { title: `Wire labels of ${fileName(plan.root)}`, geometry: sheet },
    );
    const shortened = cut > 0 ? `${counted(cut, "label")} cut short: give those wires a shorter label.` : "";
    const sheets = `For sheets of ${sheet.name}; print at actual size.`;
    const note = notes(sheets, noteOfNumbers(kept), shortened, noteOfMissing(missing));
    return answerTo([await writeWhole(path, bytes, { force, signal })], note);
  },

  async lists(plan, { path = "", force }, { workspace, signal }) {
    if (path === "") return failed("Lists are written into a folder, and none was named.");
    const folder = await makeNamedFolder(path);
    if (!folder.written) return answerTo([folder], "");
    const { numbered, kept } = numberedWires(plan, workspace);
    const nameFor = fileNamesOf(plan.root, workspace, pathToFileURL(path).href);
    const written: Written[] = [];
    for (const table of benchDocuments(plan.judgement, numbered)) {
      const file = join(path, nameFor(`.${table.id}.csv`));
      written.push(await writeWhole(file, Buffer.from(tableCsv(table)), { force, signal }));
    }
    return answerTo(written, noteOfNumbers(kept));
  },

  async numbers(plan, _params, { workspace }) {
    const { numbered, kept } = numberedWires(plan, workspace);
    const [refusal] = whyNotNumbered(plan, kept);
    if (refusal) {
      const line = refusal.line === undefined ? "" : `Wire numbers, line ${refusal.line}: `;
      return failed(`${line}${refusal.text} No number was written.`);
    }
    const wanted = numbersToKeep(plan, workspace, { numbered, kept });
    const added = numbered.wires.filter((wire) => !wire.kept).length;
    const note = `${counted(numbered.wires.length, "conductor")} numbered, ${added} of them new.`;
    if (!wanted.changes)
      return { state: "written", paths: [], note: "Every conductor has its number already." };
    return answerTo([await keepNumbers(wanted)], note);
  },
};

const onlyPdf =
  "The plan has several surfaces, and only a PDF holds them all: choose a name that ends in .pdf.";

function whyNoSurface(plan: CheckedPlan): string {
  return (
    noteOfLeftOut(plan) ||
    "The plan has no surface: describe a board with surface(), and place parts on it with at."
  );
}

function noteOfLeftOut(plan: CheckedPlan): string {
  const leftOut = surfacesLeftOut(plan);
  return leftOut.length === 0
    ? ""
    : `Not drawn, because of a mistake in the plan: ${listInWords(leftOut, 3)}.`;
}

function notes(...all: readonly string[]): string {
  return all.filter((note) => note !== "").join(" ");
}

/** A wire whose number could not be read has none, or another one, in the document. */
function noteOfNumbers({ problems }: ReturnType<typeof numberedWires>["kept"]): string {
  return problems.length > 0 ? "Wire numbers may be missing: see their file." : "";
}

function noteOfMissing(missing: readonly string[]): string {
  return missing.length === 0
    ? ""
    : `Drawn as empty boxes, because the typeface lacks them: ${missing.join(" ")}`;
}

export function failed(message: string): DocumentAnswer {
  return { state: "failed", message: plainWords(message) };
}

function answerTo(files: readonly Written[], note: string): DocumentAnswer {
  const refused = files.filter((file) => !file.written);
  const wrong = refused.find(({ notOurs }) => notOurs === undefined);
  if (wrong) return failed(`${basename(wrong.path)} ${wrong.why}; it was not written.`);
  const [foreign] = refused;
  if (foreign) {
    const more = refused.length > 1 ? ` So it is with ${refused.length - 1} more.` : "";
    return {
      state: "not-ours",
      message: plainWords(`${basename(foreign.path)} ${foreign.notOurs}.${more}`),
    };
  }
  return { state: "written", paths: files.map(({ path }) => path), note: plainWords(note) };
}
