// Random edits of one text, of the kinds that people make.

import ts from "typescript";
import { pastedTexts } from "./starting-plans.mjs";

/** Another text, made from this one by one edit; `original` is the initial text of the file. */
export function editedText(text, original, random) {
  // An excessively long text only makes the run slow.
  if (text.length > largestText) return original;
  return random.weighted([
    [40, changeValue],
    [12, typeCharacter],
    [8, deleteSome],
    [8, typeWord],
    [6, duplicateLine],
    [4, deleteLine],
    [4, moveLine],
    [5, leaveHalfTyped],
    [4, pasteLines],
    [3, changeImport],
    [2, replaceWhole],
    [2, changeLineEnds],
    [2, () => original],
  ])(text, random);
}

const largestText = 8_000;

/** Whether it is complete TypeScript; decided by the compiler itself, not by the server under test. */
export function isWhole(text) {
  return ts.createSourceFile("file.ts", text, ts.ScriptTarget.ESNext).parseDiagnostics.length === 0;
}

function changeValue(text, random) {
  const values = [...text.matchAll(/(?<![\w"'.])\d+(?:\.\d+)?\b/g)];
  if (values.length === 0) return text;
  const { 0: before, index } = random.pick(values);
  const after = random.pick([
    () => String(1 + random.below(60)),
    () => String(random.below(400) / 10),
    () => String(Number(before) + 1),
    () => `${before}0`,
    () => random.pick(["0", "-1", "4", "16", '"1/0"', '"4/0"', "1e9", "NaN", "undefined"]),
  ])();
  return splice(text, index, before.length, after);
}

function typeCharacter(text, random) {
  return splice(text, random.below(text.length + 1), 0, random.pick(characters));
}

function deleteSome(text, random) {
  return splice(text, random.below(text.length + 1), 1 + Math.floor(random.next() ** 3 * 40), "");
}

function typeWord(text, random) {
  return splice(text, random.below(text.length + 1), 0, random.pick(words));
}

function duplicateLine(text, random) {
  return withLines(text, (lines, at) => lines.splice(at, 0, lines[at]), random);
}

function deleteLine(text, random) {
  return withLines(text, (lines, at) => lines.splice(at, 1), random);
}

function moveLine(text, random) {
  const move = (lines, at) => {
    const [line] = lines.splice(at, 1);
    lines.splice(random.below(lines.length + 1), 0, line);
  };
  return withLines(text, move, random);
}

/** Like a text while a person types at its end or in the middle of a line. */
function leaveHalfTyped(text, random) {
  const at = random.below(text.length + 1);
  return random.pick([
    () => text.slice(0, at),
    () => `${text}circuit({ name: "n`,
    () => splice(text, at, 0, "{"),
    () => splice(text, at, 0, "/*"),
    () => splice(text, at, 0, "`"),
    () => splice(text, at, text.slice(at).search(/\n|$/), ""),
  ])();
}

function pasteLines(text, random) {
  const from = random.pick(pastedTexts).split("\n");
  const start = random.below(from.length);
  const pasted = from.slice(start, start + 1 + random.below(8));
  return withLines(text, (lines, at) => lines.splice(at, 0, ...pasted), random);
}

function changeImport(text, random) {
  const imports = [...text.matchAll(/from\s*["']([^"']+)["']/g)];
  if (imports.length === 0) return text;
  const { 0: whole, 1: before, index } = random.pick(imports);
  return splice(text, index + whole.length - before.length - 1, before.length, random.pick(imported));
}

function replaceWhole(_text, random) {
  return random.pick(pastedTexts);
}

function changeLineEnds(text) {
  return text.includes("\r\n") ? text.replaceAll("\r\n", "\n") : text.replaceAll("\n", "\r\n");
}

function splice(text, start, length, inserted) {
  return text.slice(0, start) + inserted + text.slice(start + length);
}

function withLines(text, change, random) {
  const lines = text.split("\n");
  change(lines, random.below(lines.length));
  return lines.join("\n");
}

const characters = [
  ..."abcxyz{}()[]<>,;:.'\"`$/*\\ \n\t0129-+=!?&|@#",
  "\r\n",
  "\u202E",
  "冷",
  "🚐",
  "\u2028",
];

const words = [
  "circuit({ load: 3, oneWayFt: 9, gauge: 12, protect: 10 });\n",
  "circuit({",
  "gauge: ",
  "gauge: 12, ",
  "mm2: 6, ",
  "load: 5, ",
  "loadW: 60, ",
  "protect: 15, ",
  "continuous: true, ",
  'name: "new", ',
  "import ",
  "const extra = 4;\n",
  "as any",
  "NaN",
  '"1/0"',
  "...usual",
  "=> ",
  "// ",
  "undefined",
  "export ",
  'scenario({ name: "Day" });\n',
  "throw 1;\n",
];

const imported = [
  "./bank.ts",
  "./bank",
  "./bank.js",
  "./stock.ts",
  "./stock",
  "../stock.ts",
  "../../shared/far.ts",
  "./plan.ts",
  "./awning.ts",
  "./gone.ts",
  "./extra.ts",
  "loomwright",
  "node:fs",
  "../../../outside.ts",
];
