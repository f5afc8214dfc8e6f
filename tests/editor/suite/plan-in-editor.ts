import * as assert from "node:assert/strict";
import * as vscode from "vscode";

/** Writes a file into the workspace and opens it as a builder would. */
export async function openPlan(name: string, text: string): Promise<vscode.TextDocument> {
  const uri = inWorkspace(name);
  await vscode.workspace.fs.writeFile(uri, new TextEncoder().encode(text));
  const document = await vscode.workspace.openTextDocument(uri);
  // In a permanent tab: the editor closes a preview tab when the next file is opened.
  await vscode.window.showTextDocument(document, { preview: false });
  return document;
}

export function inWorkspace(name: string): vscode.Uri {
  const folder = vscode.workspace.workspaceFolders?.[0];
  assert.ok(folder, "the suite runs in a folder");
  return vscode.Uri.joinPath(folder.uri, name);
}

/** Our findings in a file, not TypeScript's. */
export function findings(uri: vscode.Uri): vscode.Diagnostic[] {
  return vscode.languages.getDiagnostics(uri).filter(({ source }) => source === "loomwright");
}

/** "conductor/ampacity" */
export function ruleOf({ code }: vscode.Diagnostic): string {
  return String(typeof code === "object" ? code.value : code);
}

/** The text under each finding with its rule, as "conductor/ampacity on 14", in the order of the text. */
export function underlined(document: vscode.TextDocument): string[] {
  return findings(document.uri)
    .sort((a, b) => a.range.start.compareTo(b.range.start) || ruleOf(a).localeCompare(ruleOf(b)))
    .map((finding) => `${ruleOf(finding)} on ${document.getText(finding.range)}`);
}

/** The range of a text that occurs once; with `inner`, the first occurrence of that within it. */
export function rangeOf(document: vscode.TextDocument, text: string, inner = text): vscode.Range {
  const at = document.getText().indexOf(text);
  assert.ok(at >= 0, `"${text}" is in the plan`);
  const start = at + text.indexOf(inner);
  return new vscode.Range(document.positionAt(start), document.positionAt(start + inner.length));
}

/** Replaces text as typing would, without saving. */
export async function replaceText(document: vscode.TextDocument, old: string, fresh: string): Promise<void> {
  const edit = new vscode.WorkspaceEdit();
  edit.replace(document.uri, rangeOf(document, old), fresh);
  assert.ok(await vscode.workspace.applyEdit(edit), "the edit is taken");
}

/**
 * Repeats until the answer is as expected, and fails with the last answer if that takes longer than a person would wait. The time
 * is a limit for giving up, and is never measured.
 */
export async function eventually<T>(
  what: string,
  ask: () => T | PromiseLike<T>,
  asExpected: (answer: T) => boolean,
): Promise<T> {
  const giveUp = Date.now() + 20_000;
  for (;;) {
    const answer = await ask();
    if (asExpected(answer)) return answer;
    if (Date.now() > giveUp)
      assert.fail(`${what}; the last answer was ${JSON.stringify(answer, undefined, 1)}`);
    await new Promise((resolve) => setTimeout(resolve, 25));
  }
}

/** Waits until the file has exactly these findings, in the form of {@link underlined}. */
export async function untilUnderlined(
  document: vscode.TextDocument,
  expected: readonly string[],
): Promise<void> {
  await eventually(
    `expected ${JSON.stringify(expected)} in ${document.uri.path}`,
    () => underlined(document),
    (found) => JSON.stringify(found) === JSON.stringify(expected),
  );
}

/** All text of the hovers at a position. */
export async function hoverText(uri: vscode.Uri, position: vscode.Position): Promise<string> {
  const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
    "vscode.executeHoverProvider",
    uri,
    position,
  );
  return hovers
    .flatMap(({ contents }) => contents)
    .map((content) => (typeof content === "string" ? content : content.value))
    .join("\n");
}

/** Titles of the lenses over a file. */
export async function lensTitles(uri: vscode.Uri): Promise<string[]> {
  const lenses = await vscode.commands.executeCommand<vscode.CodeLens[]>(
    "vscode.executeCodeLensProvider",
    uri,
    100,
  );
  return lenses.map(({ command }) => command?.title ?? "");
}

/** The outline of a file: its topmost symbols. */
export async function outlineOf(uri: vscode.Uri): Promise<readonly vscode.DocumentSymbol[]> {
  const symbols = await vscode.commands.executeCommand<vscode.DocumentSymbol[] | undefined>(
    "vscode.executeDocumentSymbolProvider",
    uri,
  );
  return symbols ?? [];
}
