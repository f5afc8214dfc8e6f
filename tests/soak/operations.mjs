// The operations of an editor, or of a user beside it, in a soak. Each is plain data and names its result, not a change of the
// previous state; so any part of a list of them can be repeated.

import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { TextDocument } from "vscode-languageserver-textdocument";

/**
 * A folder on disk, and an editor's view of it:
 * `pulls` (it asks for findings), `folders` of the workspace, `configuration`, and `open` documents by URI in the order of
 * opening.
 */
export function worldIn(base, { pulls, folders, configuration, open, files }) {
  for (const [name, text] of Object.entries(files)) write(join(base, name), text);
  return {
    base,
    pulls,
    folders: folders.map((name) => uriIn(base, name)),
    configuration,
    open: new Map(
      open.map(([uri, text, version]) => [uri, TextDocument.create(uri, "typescript", version, text)]),
    ),
  };
}

/** The present state of the world, to begin from there again. */
export function snapshotOf({ base, pulls, folders, configuration, open }) {
  return {
    base,
    pulls,
    folders: folders.map((uri) => relative(base, fileURLToPath(uri))),
    configuration,
    open: [...open.values()].map((document) => [document.uri, document.getText(), document.version]),
    files: Object.fromEntries(filesOf(base).map((name) => [name, readFileSync(join(base, name), "utf8")])),
  };
}

/** Performs one operation: on the world, and through the editor on the server. */
export async function perform(operation, world, editor) {
  const { base, open } = world;
  switch (operation.kind) {
    case "open": {
      const { uri, text } = operation;
      if (open.has(uri)) return;
      const document = TextDocument.create(uri, "typescript", 1, text);
      open.set(uri, document);
      return editor.open(document);
    }
    case "close":
      if (open.delete(operation.uri))
        editor.notify("textDocument/didClose", { textDocument: { uri: operation.uri } });
      return;
    case "save":
      if (!open.has(operation.uri)) return;
      write(fileURLToPath(operation.uri), open.get(operation.uri).getText());
      editor.notify("textDocument/didSave", { textDocument: { uri: operation.uri } });
      return editor.notify("workspace/didChangeWatchedFiles", {
        changes: [{ uri: operation.uri, type: changed }],
      });
    case "type": {
      const document = open.get(operation.uri);
      if (!document) return;
      const contentChanges = changesTo(operation.text, document, operation.sentAs);
      const version = document.version + 1;
      TextDocument.update(document, contentChanges, version);
      return editor.notify("textDocument/didChange", {
        textDocument: { uri: document.uri, version },
        contentChanges,
      });
    }
    case "on disk": {
      const changes = Object.entries(operation.files).map(([name, text]) => {
        const path = join(base, name);
        const type = text === null ? deleted : existsSync(path) ? changed : created;
        if (text === null) rmSync(path, { force: true });
        else write(path, text);
        return { uri: uriIn(base, name), type };
      });
      const others = (operation.alsoNamed ?? []).map((name) => ({ uri: uriIn(base, name), type: changed }));
      return editor.notify("workspace/didChangeWatchedFiles", { changes: [...others, ...changes] });
    }
    case "configure":
      world.configuration = operation.configuration;
      return editor.configure(operation.configuration);
    case "folders": {
      const before = new Set(world.folders);
      world.folders = operation.folders.map((name) => uriIn(base, name));
      const named = (uris) => uris.map((uri) => ({ uri, name: uri }));
      return editor.notify("workspace/didChangeWorkspaceFolders", {
        event: {
          added: named(world.folders.filter((uri) => !before.delete(uri))),
          removed: named([...before]),
        },
      });
    }
    case "ask":
      return operation.cancelAfterMs === undefined
        ? editor.ask(operation.method, operation.params)
        : editor.askAndCancel(operation.method, operation.params, operation.cancelAfterMs);
  }
}

const [created, changed, deleted] = [1, 2, 3];

/** As editors send it: as a range, as two, or whole. */
function changesTo(text, document, sentAs) {
  if (sentAs === "whole") return [{ text }];
  const before = document.getText();
  const { start, end, inserted } = difference(before, text);
  const range = { start: document.positionAt(start), end: document.positionAt(end) };
  if (sentAs === "range") return [{ range, text: inserted }];
  return [
    { range, text: "" },
    { range: { start: range.start, end: range.start }, text: inserted },
  ];
}

function difference(before, after) {
  const shorter = Math.min(before.length, after.length);
  let start = 0;
  while (start < shorter && before[start] === after[start]) start++;
  let same = 0;
  while (same < shorter - start && before.at(-1 - same) === after.at(-1 - same)) same++;
  return { start, end: before.length - same, inserted: after.slice(start, after.length - same) };
}

function write(path, text) {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
}

function uriIn(base, name) {
  return pathToFileURL(join(base, name)).href;
}

/** Names below the folder, without git's own. */
export function filesOf(base) {
  return readdirSync(base, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(base, join(entry.parentPath ?? entry.path, entry.name)))
    .filter((name) => !name.startsWith(".git"))
    .sort();
}
