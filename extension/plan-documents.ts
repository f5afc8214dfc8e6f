import { Disposable, type TextDocument, type TextDocumentChangeEvent, Uri, workspace } from "vscode";

/**
 * Calls back once, as soon as the editor holds a plan: a TypeScript or JavaScript document that names the library, or any such
 * document of a folder with the library installed. The latter may be part of a plan that names the library elsewhere.
 */
export function onFirstPlan(found: () => void): Disposable {
  const listening: Disposable[] = [];
  const stop = () => Disposable.from(...listening.splice(0)).dispose();
  const look = async (mayBePlan: boolean | PromiseLike<boolean>) => {
    if (!(await mayBePlan) || listening.length === 0) return;
    stop();
    found();
  };
  listening.push(
    workspace.onDidOpenTextDocument((document) => look(belongsToPlan(document))),
    workspace.onDidChangeTextDocument((change) => look(changeNamesLibrary(change))),
  );
  for (const document of workspace.textDocuments) void look(belongsToPlan(document));
  return new Disposable(stop);
}

const libraryImported = /["'`]loomwright["'`]/;

async function belongsToPlan(document: TextDocument): Promise<boolean> {
  if (!isScript(document)) return false;
  return libraryImported.test(document.getText()) || (await libraryIsInstalledFor(document));
}

/** Looks only at changed lines: typing in a large file of another project stays free of cost. */
function changeNamesLibrary({ document, contentChanges }: TextDocumentChangeEvent): boolean {
  return (
    isScript(document) &&
    contentChanges.some(({ range, text }) => {
      const lastLine = range.start.line + text.split("\n").length - 1;
      for (let line = range.start.line; line <= lastLine && line < document.lineCount; line++) {
        if (libraryImported.test(document.lineAt(line).text)) return true;
      }
      return false;
    })
  );
}

/** The languages and schemes that the server receives; see the document selector of the session. */
function isScript({ languageId, uri }: TextDocument): boolean {
  return (
    (languageId === "typescript" || languageId === "javascript") &&
    (uri.scheme === "file" || uri.scheme === "untitled")
  );
}

async function libraryIsInstalledFor(document: TextDocument): Promise<boolean> {
  const folder = workspace.getWorkspaceFolder(document.uri);
  if (!folder) return false;
  try {
    await workspace.fs.stat(Uri.joinPath(folder.uri, "node_modules", "loomwright", "package.json"));
    return true;
  } catch {
    return false;
  }
}
