import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { type GivenText, textsGiven } from "./shown-texts.ts";

/*
 * Text of a plan, a file name, a path or an error never becomes a link or an icon in the editor: every text that the editor
 * receives for display is a literal, or has been through `editorWords`. The compiler finds the places, by the declarations of the
 * editor's interface and of the protocol. Each parameter and property there that takes text counts as shown unless the list below
 * gives the reason why it is not, so a new call of any kind fails here until it is right or listed.
 */

const house = fileURLToPath(new URL("../..", import.meta.url));

/** By the beginning of the taker's name. */
const notShown: Readonly<Record<string, string>> = {
  "Uri.": "an address",
  "TextDocumentIdentifier.uri": "an address",
  "PublishDiagnosticsParams.uri": "an address",
  "Location.uri": "an address",
  "CodeDescription.href": "the address of a rule's page, which the extension turns into a command of its own",
  "FileSystemWatcher.globPattern": "a pattern of file names",
  "registerCommand.": "the id of a command, and its answer to the caller",
  "registerTextDocumentContentProvider.scheme": "part of an address",
  "TextDocumentContentProvider.": "the text of a page, as Markdown: held by the tests of those pages",
  TextDocumentFilter: "which files are meant",
  NotebookCellTextDocumentFilter: "which files are meant",
  "Disposable.dispose": "the answer of a callback that the editor ignores",
  "StatusBarItem.command": "the id of a command",
  "ProvideDiagnosticSignature.": "passed on as it came from the editor",
  "LogOutputChannel.": "the log: plain text in which nothing is made an icon, and no command a link",
  "RemoteConsole.": "the log",
  "window/logMessage.": "the log",
  "WindowProgress.attachWorkDoneProgress.token": "the id that the editor gave to a request",
  "Webview.html": "an empty page of ours; its own test holds that no text of a plan is in it",
  "ServerInfo.version": "our own version",
  "DiagnosticOptions.identifier": "a constant of the protocol",
  "DidChangeConfigurationRegistrationOptions.section": "the name of a section of settings",
  Diagnostic:
    "plain text in the editor's list and over the underline; the story of hostile names looks at both",
  "Command.command": "the id of a command",
  "CompletionOptions.triggerCharacters": "constants of the protocol",
  "CodeActionOptions.codeActionKinds": "constants of the protocol",
  "InsertReplaceEdit.newText": "text that goes into the plan",
  "CodeAction.kind": "a constant of the protocol",
  "WorkspaceFolder.": "the editor's own, kept for its engines",
  "Message.jsonrpc": "a constant of the protocol",
  "ResponseMessage.": "an answer on its way: its texts are looked at where it is made",
  "createServerPipeTransport.": "the name of a pipe",
  "StringValue.value": "text that goes into the plan",
  "TextEdit.newText": "text that goes into the plan",
  "CompletionItem.sortText": "what the editor sorts by",
  "CompletionItem.filterText": "what the editor compares with the text typed so far",
  "MarkupContent.value":
    "Markdown, in which names go through markdownWords; a client that we start trusts none of it",
};

const files = ["extension", "extension/diagram", "server", "server/front", "server/language"].flatMap(
  (folder) =>
    readdirSync(join(house, folder))
      .filter((name) => /(?<!\.test|\.d)\.ts$/.test(name))
      .map((name) => `${folder}/${name}`),
);

const head = `
import * as vscode from "vscode";
import { type Connection, type CodeLens, LSPErrorCodes, ResponseError } from "vscode-languageserver";
import { editorWords } from "../server/language/plain-words.ts";
declare const connection: Connection;
declare const plan: string;
declare const own: { readonly label: string; readonly name: string };
declare const item: vscode.StatusBarItem;
declare const panel: vscode.WebviewPanel;
declare const progress: vscode.Progress<{ message?: string }>;
const literal = "Open the log";
`;
const wrong = [
  "vscode.window.showErrorMessage(plan);",
  "vscode.window.showErrorMessage(`It failed: ${plan}`);",
  "vscode.window.showErrorMessage('It failed: ' + plan);",
  "vscode.window.showErrorMessage(literal ? plan : literal);",
  "vscode.window.showErrorMessage(editorWords(plan).trim());",
  "vscode.window.showErrorMessage(`$${editorWords(plan)}`);",
  "vscode.window.showErrorMessage(`[x]${editorWords(plan)}`);",
  "vscode.window.showErrorMessage(`${editorWords(plan)}${editorWords(plan)}`);",
  "vscode.window.showErrorMessage(`${editorWords(plan)}(command:x)`);",
  "vscode.window.showInformationMessage(literal, plan);",
  "vscode.window.showWarningMessage(literal, { modal: true, detail: plan });",
  "const detail = plan; vscode.window.showWarningMessage(literal, { modal: true, detail });",
  "const show = vscode.window.showWarningMessage; show(plan);",
  "const { showWarningMessage } = vscode.window; showWarningMessage(plan);",
  "[plan].forEach(vscode.window.showErrorMessage);",
  "vscode.window.setStatusBarMessage(plan, 1000);",
  "vscode.window.withProgress({ location: 15, title: plan }, async () => {});",
  "vscode.window.withProgress({ location: 15 }, async (told) => told.report({ message: plan }));",
  "vscode.window.showInputBox({ prompt: literal, validateInput: (typed) => `${typed} is taken` });",
  "vscode.window.showInputBox({ prompt: literal, validateInput(typed) { return typed; } });",
  "vscode.window.showQuickPick([plan]);",
  "vscode.window.showQuickPick([own]);",
  "vscode.window.showQuickPick([{ label: literal, description: plan }]);",
  "vscode.window.createWebviewPanel('x', plan, 1);",
  "item.text = `$(error) ${plan}`;",
  "item.tooltip = plan;",
  "item.name = plan;",
  "item.tooltip = new vscode.MarkdownString(plan, true);",
  "panel.title = plan;",
  "connection.window.showErrorMessage(plan);",
  "connection.window.showInformationMessage(literal, { title: plan });",
  "declare const notify: (method: string, params: unknown) => void; notify('window/showMessage', { type: 1, message: plan });",
  "throw new ResponseError(LSPErrorCodes.RequestFailed, plan);",
  "const lens: CodeLens = { range: null!, command: { title: plan, command: '' } };",
  "const lenses = (): CodeLens[] => [1].map(() => ({ range: null!, command: own && { title: own.name, command: '' } }));",
];
const right = [
  "vscode.window.showErrorMessage(editorWords(plan));",
  "vscode.window.showErrorMessage(literal, 'Open', literal);",
  "vscode.window.showErrorMessage(`It failed: ${editorWords(plan)}, ${3} times`);",
  "const message = editorWords(plan); vscode.window.showWarningMessage(message, { modal: true, detail: literal });",
  "const title = editorWords(plan); vscode.window.withProgress({ location: 15, title }, async () => {});",
  "vscode.window.showQuickPick([{ label: editorWords(plan) }]);",
  "item.text = `$(error) ${editorWords(plan)}`;",
  "connection.window.showErrorMessage(editorWords(plan));",
  "const lens: CodeLens = { range: null!, command: { title: editorWords(plan), command: '' } };",
];
const madeUp = Object.fromEntries(
  [...wrong, ...right].map((line, index) => [`extension/made-up-${index}.ts`, `${head}${line}\n`]),
);

/** One program for everything: most of the time is the compiler's own preparation. */
const allGiven = textsGiven(files, madeUp);
const given = allGiven.filter(({ place }) => !place.startsWith("extension/made-up-"));

const unfit = (all: readonly GivenText[]) =>
  all.filter(({ taker, fit }) => !fit && !Object.keys(notShown).some((name) => taker.startsWith(name)));

test("all that the editor is given to show is a literal or has been through editorWords", () => {
  for (const name of Object.keys(notShown)) {
    expect(
      given.filter(({ taker }) => taker.startsWith(name)),
      `${name} is listed, and never met`,
    ).not.toEqual([]);
  }
  // A broken reader would not find any of these.
  for (const taker of [
    ...["showInformationMessage.message", "showErrorMessage.message", "showWarningMessage.message"],
    ...["ProgressOptions.title", "StatusBarItem.text", "StatusBarItem.tooltip", "WebviewPanel.title"],
    ...["InputBoxOptions.prompt", "InputBoxOptions.validateInput returned", "MessageOptions.detail"],
    ...[
      "Command.title",
      "DocumentSymbol.name",
      "InlayHint.label",
      "CompletionItem.label",
      "CodeAction.title",
    ],
  ]) {
    expect(given.map((one) => one.taker)).toContain(taker);
  }
  expect(unfit(given).map(({ place, taker, written }) => `${place} ${taker}: ${written}`)).toEqual([]);
});

describe("a call site that is not right is found", () => {
  const linesOf = (index: number) =>
    allGiven.filter(({ place }) => place.startsWith(`extension/made-up-${index}.ts:`));

  test.each(wrong.map((line, index) => [line, index] as const))("%s", (_, index) => {
    expect(unfit(linesOf(index))).not.toEqual([]);
  });
  test.each(right.map((line, index) => [line, wrong.length + index] as const))(
    "this is right: %s",
    (_, index) => {
      expect(unfit(linesOf(index))).toEqual([]);
    },
  );
});

test("nothing is declared fit by a cast, except where it is made so", () => {
  const casting = files.filter((file) =>
    /\bas (?:unknown as )?EditorWords\b|<EditorWords>/.test(readFileSync(join(house, file), "utf8")),
  );
  expect(casting).toEqual(["server/language/plain-words.ts"]);
});

test("commands are registered where their errors are made fit to be shown, and nowhere else", () => {
  const registered = given.filter(({ taker }) => taker === "registerCommand.command");
  expect(registered.map(({ place }) => place.replace(/:\d+$/, ""))).toEqual(["extension/command.ts"]);
});
