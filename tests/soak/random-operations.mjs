// Chooses the next operation at random.

import { readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { filesOf } from "./operations.mjs";
import { editedText, isWhole } from "./random-text.mjs";
import { pastedTexts, startingFiles, workspaceFolders } from "./starting-plans.mjs";

/** No plan is slow here; a busy machine must not make one look slow. */
export const calmConfiguration = { inlayHints: true, timeLimitMs: 20_000, memoryLimitMiB: 64 };

export function createRandomOperations(world, random) {
  /** By URI: the texts for undo and redo. */
  const histories = new Map();

  const nameOf = (uri) =>
    uri.startsWith("file:") ? relative(world.base, fileURLToPath(uri)).replaceAll("\\", "/") : uri;
  const uriOf = (name) => (name.includes(":") ? name : pathToFileURL(join(world.base, name)).href);
  const anyOpen = () => random.pick([...world.open.values()]);
  const historyOf = (uri) => {
    if (!histories.has(uri)) histories.set(uri, { undo: [], redo: [] });
    return histories.get(uri);
  };
  const typed = (document, text) => ({
    kind: "type",
    uri: document.uri,
    text,
    sentAs: random.pick(["range", "range", "range", "range", "two ranges", "whole"]),
  });

  const edit = () => {
    const document = anyOpen();
    if (!document) return openOrClose();
    const before = document.getText();
    const history = historyOf(document.uri);
    // Most broken texts are mended soon: most texts are whole.
    if (history.undo.length > 0 && random.chance(0.5) && !isWhole(before)) return undoOrRedo(document);
    history.undo.push(before);
    if (history.undo.length > 20) history.undo.shift();
    history.redo.length = 0;
    const original = startingFiles[nameOf(document.uri)] ?? startingFiles["camper/odd.ts"];
    return typed(document, editedText(before, original, random));
  };

  const undoOrRedo = (document = anyOpen()) => {
    if (!document) return undefined;
    const { undo, redo } = historyOf(document.uri);
    const [from, to] = redo.length > 0 && random.chance(0.3) ? [redo, undo] : [undo, redo];
    const text = from.pop();
    if (text === undefined) return undefined;
    to.push(document.getText());
    return typed(document, text);
  };

  const openOrClose = () => {
    const { open } = world;
    if (open.size > 2 && random.chance(0.45)) return { kind: "close", uri: anyOpen().uri };
    const uri = uriOf(
      random.pick([...Object.keys(startingFiles), ...filesOf(world.base), "untitled:Untitled-1"]),
    );
    if (open.has(uri)) return undefined;
    return { kind: "open", uri, text: textOnDisk(uri) ?? random.pick(pastedTexts) };
  };

  const textOnDisk = (uri) => {
    try {
      return readFileSync(new URL(uri), "utf8");
    } catch {
      return undefined;
    }
  };

  const changeOnDisk = () => {
    const name = random.pick([...Object.keys(startingFiles), ...ownNames]);
    const before = textOnDisk(uriOf(name));
    const text = random.weighted([
      [
        6,
        () =>
          editedText(
            before ?? random.pick(pastedTexts),
            startingFiles[name] ?? random.pick(pastedTexts),
            random,
          ),
      ],
      [2, () => startingFiles[name] ?? random.pick(pastedTexts)],
      [2, () => null],
    ])();
    // On disk most files are whole: they were saved.
    return {
      kind: "on disk",
      files: { [name]: text === null || isWhole(text) ? text : (startingFiles[name] ?? null) },
    };
  };

  const renameOnDisk = () => {
    const [from, to] = [
      random.pick(filesOf(world.base)),
      random.pick([...Object.keys(startingFiles), ...ownNames]),
    ];
    if (from === undefined || from === to) return undefined;
    return { kind: "on disk", files: { [from]: null, [to]: textOnDisk(uriOf(from)) ?? "" } };
  };

  /** Like the events of a build step, an install or a checkout. */
  const flood = () => {
    const alsoNamed = Array.from({ length: 100 + random.below(400) }, (_, index) =>
      random.pick([
        `camper/made/${index}.ts`,
        `camper/node_modules/x/${index}.js`,
        ...Object.keys(startingFiles),
        `shared/${index}.ts`,
      ]),
    );
    return { kind: "on disk", files: changeOnDisk().files, alsoNamed };
  };

  const save = () => {
    const document = anyOpen();
    return document?.uri.startsWith("file:") ? { kind: "save", uri: document.uri } : undefined;
  };

  const configure = () => ({
    kind: "configure",
    configuration: {
      inlayHints: random.chance(0.7),
      timeLimitMs: random.pick([20_000, 30_000]),
      memoryLimitMiB: random.pick([64, 128]),
    },
  });

  const changeFolders = () => ({
    kind: "folders",
    folders: world.folders.length > 1 ? [workspaceFolders[0]] : [...workspaceFolders],
  });

  const ask = () => {
    const question = randomQuestion(world, random);
    return question && { kind: "ask", ...question };
  };

  const askAndCancel = () => {
    const question = randomQuestion(world, random);
    return question && { kind: "ask", ...question, cancelAfterMs: random.pick([0, 0, 1, 2, 5, 20]) };
  };

  return {
    ask,
    next: () =>
      random.weighted([
        [100, edit],
        [14, () => undoOrRedo()],
        [18, ask],
        [8, askAndCancel],
        [3, changeOnDisk],
        [1.5, renameOnDisk],
        [0.4, flood],
        [3, openOrClose],
        [1, save],
        [0.5, configure],
        [0.3, changeFolders],
      ])(),
    /** Returns every half-typed text to one that a builder would go back to. */
    mending() {
      const typing = [...world.open.values()]
        .filter((document) => !isWhole(document.getText()))
        .map((document) => {
          const before = historyOf(document.uri).undo.findLast(isWhole);
          return typed(
            document,
            before ?? startingFiles[nameOf(document.uri)] ?? startingFiles["camper/odd.ts"],
          );
        });
      const broken = filesOf(world.base).filter((name) => !isWhole(textOnDisk(uriOf(name))));
      const files = Object.fromEntries(broken.map((name) => [name, startingFiles[name] ?? null]));
      return broken.length > 0 ? [...typing, { kind: "on disk", files }] : typing;
    },
    /** The edits of an answer as texts, for documents with the version it was made for. */
    application(action) {
      return (action.edit?.documentChanges ?? []).flatMap(({ textDocument, edits }) => {
        const document = world.open.get(textDocument.uri);
        if (document?.version !== textDocument.version) return [];
        return [typed(document, applied(document, edits))];
      });
    },
  };
}

/** Files that come and go and that no starting plan imports. */
const ownNames = [
  "camper/extra.ts",
  "camper/gone.ts",
  "camper/bank.js",
  "camper/stock/index.ts",
  "shared/far.js",
];

/** A request at a random position of an open file. */
export function randomQuestion(world, random) {
  const document = random.pick([...world.open.values()]);
  if (!document) return undefined;
  const textDocument = { uri: document.uri };
  const text = document.getText();
  const position = document.positionAt(placeIn(text, random));
  const range = { start: position, end: document.positionAt(random.below(text.length + 200)) };
  const context = { diagnostics: [] };
  return random.weighted([
    [10, () => ({ method: "textDocument/hover", params: { textDocument, position } })],
    [6, () => ({ method: "textDocument/completion", params: { textDocument, position } })],
    [
      4,
      () => ({ method: "textDocument/codeAction", params: { textDocument, range: ordered(range), context } }),
    ],
    [
      1,
      () => ({
        method: "textDocument/codeAction",
        params: {
          textDocument,
          range: ordered(range),
          context: { ...context, only: ["source.fixAll.loomwright"] },
        },
      }),
    ],
    [4, () => ({ method: "textDocument/documentSymbol", params: { textDocument } })],
    [4, () => ({ method: "textDocument/codeLens", params: { textDocument } })],
    [4, () => ({ method: "textDocument/inlayHint", params: { textDocument, range: ordered(range) } })],
    [world.pulls ? 8 : 0, () => ({ method: "textDocument/diagnostic", params: { textDocument } })],
    [3, () => ({ method: "loomwright/working", params: { textDocument, position } })],
    [
      1,
      () => ({
        method: "loomwright/diagram",
        params: {
          textDocument,
          view: random.pick(["one-line", "wiring"]),
          ...(random.chance(0.5) ? { scenario: random.pick(["Night", "Day"]) } : {}),
        },
      }),
    ],
    [0.3, () => ({ method: "loomwright/difference", params: { textDocument } })],
  ])();
}

/** Mostly a position with an answer: in a word or after a colon. */
function placeIn(text, random) {
  const at = random.below(text.length + 1);
  if (random.chance(0.3)) return at;
  const found = text.slice(at).search(/[\w"']/);
  return found < 0 ? at : at + found + random.below(2);
}

function ordered({ start, end }) {
  const isLater = start.line > end.line || (start.line === end.line && start.character > end.character);
  return isLater ? { start: end, end: start } : { start, end };
}

/** The edits of one document, last first. */
function applied(document, edits) {
  return edits
    .map(({ range, newText, snippet }) => ({
      start: document.offsetAt(range.start),
      end: document.offsetAt(range.end),
      newText: newText ?? snippet?.value ?? "",
    }))
    .sort((one, other) => other.start - one.start)
    .reduce(
      (text, { start, end, newText }) => text.slice(0, start) + newText + text.slice(end),
      document.getText(),
    );
}
