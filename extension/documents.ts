import { Disposable, env, ProgressLocation, Uri, window, workspace } from "vscode";
import type {
  DocumentAnswer,
  DocumentParams,
  documentMethod,
  ReportAnswer,
  ReportParams,
  reportMethod,
} from "../server/language/messages.ts";
import { editorWords } from "../server/language/plain-words.ts";
import { reasonOf, registerCommand } from "./command.ts";
import type { ServerSession } from "./server-session.ts";

/**
 * The commands that write a document of a plan: report, drawing, front views, drilling templates, lists, labels, wire numbers. Each asks for its file or folder, and
 * offers to open the file. A caller that knows the plan, such as the diagram's panel, names it; else it is the one in the editor.
 */
export function registerDocuments(session: ServerSession): Disposable {
  const register = (name: keyof typeof documents) =>
    registerCommand(`loomwright.${name}`, async (given: unknown, shown: unknown) => {
      const plan = given instanceof Uri ? given : planInEditor();
      const asked = plan && (await documents[name](plan, readShown(shown)));
      if (asked) await writeDocument(session, asked);
    });
  return Disposable.from(
    ...(Object.keys(documents) as (keyof typeof documents)[]).map(register),
    registerCommand("loomwright.exportDiagram", async (given: unknown, shown: unknown) => {
      const plan = given instanceof Uri ? given : planInEditor();
      const picked = plan && (await askDocument());
      const asked = picked && (await documents[picked](plan, readShown(shown)));
      if (asked) await writeDocument(session, asked);
    }),
  );
}

/** A document to write, and the means to show where it is. */
interface Asked {
  /** Its name, as in "Writing labels". */
  readonly title: string;
  readonly request:
    | { readonly method: typeof reportMethod; readonly params: Omit<ReportParams, "force"> }
    | { readonly method: typeof documentMethod; readonly params: Omit<DocumentParams, "force"> };
}

type ShownDrawing = Pick<DocumentParams, "view" | "scenario" | "colours">;

type Ask = (plan: Uri, shown: ShownDrawing) => Promise<Asked | undefined>;

const documents = {
  async writeReport(plan) {
    const edition = await ask("Which edition of the report?", editions);
    const target =
      edition &&
      (await askFile(plan, {
        title: "Write the Report",
        ending: edition === "bench" ? "bench.html" : "report.html",
        filters: { "Page for any browser": ["html"], "PDF, for paper": ["pdf"] },
      }));
    // An HTML page adapts to the paper it is printed on.
    const page =
      target && (/\.pdf$/i.test(target.path) ? await ask("Paper of the report", inOrder(papers)) : "A4");
    const stated = page && (await askRevision());
    if (!stated) return undefined;
    const params = { ...ofPlan(plan), edition, path: target.fsPath, page, ...stated };
    return { title: nameOf(target), request: { method: "loomwright/report", params } };
  },

  async writeDrawing(plan, shown) {
    const target = await askFile(plan, {
      title: "Write the Drawing",
      ending: `${shown.view ?? "wiring"}.pdf`,
      filters: { "PDF, for paper": ["pdf"], "SVG, at any size": ["svg"], "PNG, as an image": ["png"] },
    });
    const isPdf = target !== undefined && /\.pdf$/i.test(target.path);
    const paper =
      target && (isPdf ? await ask("Paper of the drawing", [ownSheet, ...inOrder(papers)]) : "own");
    // The panel has its own choice.
    const colours = paper && (shown.colours ?? (await ask("Conductors of the drawing", lines)));
    if (colours === undefined) return undefined;
    const stated = paper && (await askRevision());
    if (!stated) return undefined;
    return documentIn(nameOf(target), {
      ...{ ...ofPlan(plan), ...shown, colours, document: "drawing", path: target.fsPath, ...stated },
      ...(paper === "own" ? {} : { page: paper }),
    });
  },

  async writeBoards(plan) {
    const target = await askFile(plan, {
      title: "Write the Front Views of the Boards",
      ending: "boards.pdf",
      filters: {
        "PDF, a sheet for each surface": ["pdf"],
        "SVG, of one surface": ["svg"],
        "PNG, of one surface": ["png"],
      },
    });
    if (!target) return undefined;
    const isPdf = /\.pdf$/i.test(target.path);
    const paper = isPdf ? await ask("Paper of the front views", [ownSheet, ...inOrder(papers)]) : "own";
    const conductors = paper && (await ask("Conductors of the front views", ways));
    if (paper === undefined || conductors === undefined) return undefined;
    const stated = await askRevision();
    if (!stated) return undefined;
    return documentIn(nameOf(target), {
      ...{ ...ofPlan(plan), document: "boards", path: target.fsPath, conductors, ...stated },
      ...(paper === "own" ? {} : { page: paper }),
    });
  },

  async writeTemplates(plan) {
    const target = await askFile(plan, {
      title: "Write the Drilling Templates",
      ending: "templates.pdf",
      filters: {
        "PDF, sheets to put together": ["pdf"],
        "SVG in mm, of one surface": ["svg"],
        "DXF in mm, of one surface": ["dxf"],
      },
    });
    if (!target) return undefined;
    const isPdf = /\.pdf$/i.test(target.path);
    const page = isPdf ? await ask("Paper of the templates", inOrder(papers)) : "A4";
    if (!page) return undefined;
    return documentIn(nameOf(target), { ...ofPlan(plan), document: "templates", path: target.fsPath, page });
  },

  async writeLabels(plan) {
    const filters = { "PDF, for label sheets": ["pdf"] };
    const target = await askFile(plan, { title: "Write the Labels", ending: "labels.pdf", filters });
    const page = target && (await ask("Paper of the label sheets", inOrder(labelPapers)));
    if (!page) return undefined;
    return documentIn(nameOf(target), { ...ofPlan(plan), document: "labels", path: target.fsPath, page });
  },

  async writeLists(plan) {
    const [folder] =
      (await window.showOpenDialog({
        title: "Where should the lists go?",
        openLabel: "Write Them Here",
        canSelectFiles: false,
        canSelectFolders: true,
        defaultUri: Uri.joinPath(plan, ".."),
      })) ?? [];
    if (!folder) return undefined;
    return documentIn("the lists", { ...ofPlan(plan), document: "lists", path: folder.fsPath });
  },

  async numberWires(plan) {
    return documentIn("the wire numbers", { ...ofPlan(plan), document: "numbers" });
  },
} satisfies Record<string, Ask>;

function askDocument(): Promise<keyof typeof documents | undefined> {
  return ask<keyof typeof documents>("What should be written?", [
    { label: "Drawing", description: "this view, as PDF, SVG or PNG", value: "writeDrawing" },
    {
      label: "Front views of the boards",
      description: "each surface to scale, as PDF; of one surface also SVG or PNG",
      value: "writeBoards",
    },
    {
      label: "Drilling templates",
      description: "each surface in true size, over several sheets",
      value: "writeTemplates",
    },
    {
      label: "Lists",
      description: "wires, cuts, parts, fuses, first power: a CSV file each",
      value: "writeLists",
    },
    { label: "Labels", description: "for both ends of each wire, on label sheets", value: "writeLabels" },
    {
      label: "Report",
      description: "for the bench or for the inspector, as a page or a PDF",
      value: "writeReport",
    },
    {
      label: "Wire numbers",
      description: "a permanent number for each wire, in a file beside the plan",
      value: "numberWires",
    },
  ]);
}

function documentIn(title: string, params: Omit<DocumentParams, "force">): Asked {
  return { title, request: { method: "loomwright/document", params } };
}

function ofPlan(plan: Uri): { readonly textDocument: { readonly uri: string } } {
  return { textDocument: { uri: plan.toString() } };
}

function nameOf(target: Uri): string {
  return workspace.asRelativePath(target);
}

/** The view and scenario that the panel shows: its export draws the same. */
function readShown(given: unknown): ShownDrawing {
  const { view, scenario, colours } = (given ?? {}) as Record<string, unknown>;
  return {
    ...(view === "one-line" || view === "wiring" ? { view } : {}),
    ...(typeof scenario === "string" && scenario !== "" ? { scenario } : {}),
    ...(typeof colours === "boolean" ? { colours } : {}),
  };
}

function planInEditor(): Uri | undefined {
  const uri = window.activeTextEditor?.document.uri;
  if (uri?.scheme === "file") return uri;
  window.showInformationMessage(
    uri?.scheme === "untitled"
      ? "Save the plan first: its documents name its source files, and are written beside them."
      : "Open a plan in a folder on this machine, and ask again.",
  );
  return undefined;
}

async function askFile(
  plan: Uri,
  how: { readonly title: string; readonly ending: string; readonly filters: Record<string, string[]> },
): Promise<Uri | undefined> {
  const { title, ending, filters } = how;
  const chosen = await window.showSaveDialog({
    title: editorWords(title),
    saveLabel: "Write",
    defaultUri: plan.with({ path: `${plan.path.replace(/\.[cm]?[jt]sx?$/i, "")}.${ending}` }),
    filters,
  });
  const endings = Object.values(filters).flat();
  if (!chosen || endings.some((one) => chosen.path.toLowerCase().endsWith(`.${one}`))) return chosen;
  return chosen.with({ path: `${chosen.path}.${ending.split(".").at(-1)}` });
}

interface Choice<Value> {
  readonly label: string;
  readonly description: string;
  readonly value: Value;
}

/** A quick pick. Undefined: it was left without a choice. */
async function ask<Value>(title: string, choices: readonly Choice<Value>[]): Promise<Value | undefined> {
  const shown = choices.map(({ label, description, value }) => ({
    label: editorWords(label),
    description: editorWords(description),
    value,
  }));
  return (await window.showQuickPick(shown, { title: editorWords(title) }))?.value;
}

const editions: readonly Choice<NonNullable<ReportParams["edition"]>>[] = [
  {
    label: "For the bench",
    description: "drawing, wire schedule, fuse map, checks before first power",
    value: "bench",
  },
  { label: "For the inspector", description: "everything", value: "inspector" },
];

const lines: readonly Choice<boolean>[] = [
  { label: "Black on white", description: "for any printer", value: false },
  { label: "In their colours", description: "as the plan states those of the insulation", value: true },
];

const ways: readonly Choice<boolean>[] = [
  {
    label: "Without conductors",
    description: "parts, channels, and distances for a tape measure",
    value: false,
  },
  { label: "Along their ways", description: "each conductor as it runs through the channels", value: true },
];

const a4 = { label: "A4", description: "210 mm × 297 mm", value: "A4" } as const;
const letter = { label: "Letter", description: "8.5 in × 11 in", value: "Letter" } as const;
const a3 = { label: "A3", description: "297 mm × 420 mm", value: "A3" } as const;
const papers: readonly Choice<ReportParams["page"]>[] = [a4, letter, a3];
const labelPapers: readonly Choice<ReportParams["page"]>[] = [a4, letter];
const ownSheet: Choice<"own"> = {
  label: "As large as the drawing",
  description: "one sheet, at its natural size",
  value: "own",
};

/** Letter first if this machine's locale is of a country where Letter is usual. */
function inOrder(all: readonly Choice<ReportParams["page"]>[]): readonly Choice<ReportParams["page"]>[] {
  return usesLetter() ? [letter, ...all.filter((one) => one !== letter)] : all;
}

/** Undefined: left without a choice. An empty object: the document states no revision. */
async function askRevision(): Promise<Pick<ReportParams, "revision"> | undefined> {
  const asked = await ask("Which revision should it state?", revisions);
  if (asked === undefined) return undefined;
  if (asked === "none") return {};
  if (asked === "commit") return { revision: asked };
  const text = await window.showInputBox({
    title: "Revision",
    prompt: "For the title block and the report, such as B",
    validateInput: (written) => (written.trim() === "" ? "A text is needed, such as B." : undefined),
  });
  return text === undefined ? undefined : { revision: { text } };
}

const revisions: readonly Choice<"none" | "commit" | "text">[] = [
  { label: "None", description: "the document states no revision", value: "none" },
  {
    label: "The last commit",
    description: "with + uncommitted if the plan differs from it",
    value: "commit",
  },
  { label: "A text…", description: "such as B", value: "text" },
];

function usesLetter(): boolean {
  return /-(US|CA|MX|PH|CL|CO|VE)$/.test(Intl.DateTimeFormat().resolvedOptions().locale);
}

async function writeDocument(session: ServerSession, asked: Asked): Promise<void> {
  const answer = await request(session, asked, false);
  if (answer?.state !== "not-ours") return tell(answer);
  const replace = "Replace";
  const detail = "Its present content will be lost.";
  const choice = await window.showWarningMessage(
    editorWords(answer.message),
    { modal: true, detail },
    replace,
  );
  if (choice === replace) tell(await request(session, asked, true));
}

/** Undefined: cancelled, or there is no server, which has been reported to the person. */
async function request(
  session: ServerSession,
  { title, request: { method, params } }: Asked,
  force: boolean,
): Promise<ReportAnswer | DocumentAnswer | undefined> {
  const client = await session.client();
  if (!client) return undefined;
  const uri = client.code2ProtocolConverter.asUri(Uri.parse(params.textDocument.uri));
  return window.withProgress(
    { location: ProgressLocation.Notification, title: editorWords(`Writing ${title}`), cancellable: true },
    async (_progress, token): Promise<ReportAnswer | DocumentAnswer | undefined> => {
      try {
        return await client.sendRequest(method, { ...params, textDocument: { uri }, force }, token);
      } catch (error) {
        if (token.isCancellationRequested) return undefined;
        return { state: "failed", message: reasonOf(error) };
      }
    },
  );
}

function tell(answer: ReportAnswer | DocumentAnswer | undefined): void {
  if (!answer) return;
  if (answer.state !== "written") {
    window.showErrorMessage(editorWords(answer.message));
    return;
  }
  const [paths, note] =
    "paths" in answer
      ? [answer.paths, answer.note]
      : [
          [answer.path],
          answer.missing && `Drawn as empty boxes, because the typeface lacks them: ${answer.missing}`,
        ];
  const [path, ...others] = paths;
  if (path === undefined) {
    window.showInformationMessage(editorWords(note));
    return;
  }
  const file = Uri.file(others.length > 0 ? path.replace(/[\\/][^\\/]*$/, "") : path);
  const words =
    others.length > 0
      ? `${paths.length} files are written to ${workspace.asRelativePath(file)}.`
      : `${workspace.asRelativePath(file)} is written.`;
  const open = others.length > 0 ? "Open the Folder" : "Open";
  window.showInformationMessage(editorWords(`${words} ${note}`.trimEnd()), open).then((choice) => {
    if (choice === open) void env.openExternal(file);
  });
}
