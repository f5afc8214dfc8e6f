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
 * The commands that write a document of a plan: report, drawing, lists, labels, wire numbers. Each asks for its file or folder, and
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

type ShownDrawing = Pick<DocumentParams, "view" | "scenario">;

type Ask = (plan: Uri, shown: ShownDrawing) => Promise<Asked | undefined>;

const documents = {
  async writeReport(plan) {
    const target = await askFile(plan, {
      title: "Write the Report",
      ending: "report.html",
      filters: { "Page for any browser": ["html"], "PDF, for paper": ["pdf"] },
    });
    // An HTML page adapts to the paper it is printed on.
    const page = target && (/\.pdf$/i.test(target.path) ? await askPaper("Paper of the report") : "A4");
    if (!page) return undefined;
    const params = { ...ofPlan(plan), path: target.fsPath, page };
    return { title: nameOf(target), request: { method: "loomwright/report", params } };
  },

  async writeDrawing(plan, shown) {
    const target = await askFile(plan, {
      title: "Write the Drawing",
      ending: `${shown.view ?? "wiring"}.pdf`,
      filters: { "PDF, for paper": ["pdf"], "SVG, at any size": ["svg"], "PNG, as an image": ["png"] },
    });
    if (!target) return undefined;
    return documentIn(nameOf(target), {
      ...ofPlan(plan),
      ...shown,
      document: "drawing",
      path: target.fsPath,
    });
  },

  async writeLabels(plan) {
    const filters = { "PDF, for label sheets": ["pdf"] };
    const target = await askFile(plan, { title: "Write the Labels", ending: "labels.pdf", filters });
    const page = target && (await askPaper("Paper of the label sheets"));
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

const exported: readonly {
  readonly name: keyof typeof documents;
  readonly title: string;
  readonly detail: string;
}[] = [
  { name: "writeDrawing", title: "Drawing", detail: "this view, as PDF, SVG or PNG" },
  { name: "writeLists", title: "Lists", detail: "wires, cuts, parts, fuses, first power: a CSV file each" },
  { name: "writeLabels", title: "Labels", detail: "for both ends of each wire, on label sheets" },
  { name: "writeReport", title: "Report", detail: "all of it, as a page or a PDF" },
];

async function askDocument(): Promise<keyof typeof documents | undefined> {
  const picked = await window.showQuickPick(
    exported.map(({ name, title, detail }) => ({
      label: editorWords(title),
      description: editorWords(detail),
      name,
    })),
    { title: "What should be written?" },
  );
  return picked?.name;
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
  const { view, scenario } = (given ?? {}) as Record<string, unknown>;
  return {
    ...(view === "one-line" || view === "wiring" ? { view } : {}),
    ...(typeof scenario === "string" && scenario !== "" ? { scenario } : {}),
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

async function askPaper(title: string): Promise<ReportParams["page"] | undefined> {
  const pages = [
    { label: "A4", description: "210 mm × 297 mm" },
    { label: "Letter", description: "8.5 in × 11 in" },
  ] as const;
  const inOrder = usesLetter() ? [...pages].reverse() : pages;
  const chosen = await window.showQuickPick(inOrder, { title: editorWords(title) });
  return chosen?.label;
}

/** Puts Letter first if this machine's locale is of a country where Letter is usual. */
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
