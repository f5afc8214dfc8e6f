// Writes library/documents/diagram/text-widths.ts: the advance width of each character of DejaVu Sans, read from the typeface's
// own tables.
// Run as `node server/output/write-text-widths.mjs`; with --check it writes nothing and fails if the file differs.

import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const require = createRequire(import.meta.url);
const fonts = join(dirname(require.resolve("dejavu-fonts-ttf/package.json")), "ttf");
const { version } = require("dejavu-fonts-ttf/package.json");
const target = fileURLToPath(new URL("../../library/documents/diagram/text-widths.ts", import.meta.url));

/** The characters of plans in European languages, units and our own marks. Every other one counts as wide. */
const ranges = [
  [0x20, 0x7e],
  [0xa0, 0x17f],
  [0x386, 0x3ce],
  [0x400, 0x45f],
  [0x2010, 0x2026],
  [0x2126, 0x2126],
  [0x2190, 0x2193],
  [0x2212, 0x2212],
  [0x2260, 0x2265],
];

const text = `/*
 * Made by server/output/write-text-widths.mjs from dejavu-fonts-ttf ${version}; not edited by hand.
 * Advance widths in thousandths of the font size, rounded up: from the first character of a range to its last.
 */

interface WidthRange {
  readonly first: number;
  readonly widths: readonly number[];
}

export const regularWidths: readonly WidthRange[] = ${written("DejaVuSans.ttf")};

export const boldWidths: readonly WidthRange[] = ${written("DejaVuSans-Bold.ttf")};
`;

if (!process.argv.includes("--check")) writeFileSync(target, text);
else if (readFileSync(target, "utf8") !== text) {
  console.error("text-widths.ts is out of date: run node server/output/write-text-widths.mjs");
  process.exitCode = 1;
}

function written(file) {
  const widthOf = widthsOf(readFileSync(join(fonts, file)));
  const lines = ranges.map(([first, last]) => {
    const widths = Array.from({ length: last - first + 1 }, (_, index) => widthOf(first + index));
    const rows = [];
    for (let from = 0; from < widths.length; from += 20)
      rows.push(`      ${widths.slice(from, from + 20).join(", ")},\n`);
    return `  {\n    first: 0x${first.toString(16)},\n    // biome-ignore format: a table\n    widths: [\n${rows.join("")}    ],\n  },\n`;
  });
  return `[\n${lines.join("")}]`;
}

/** Reads `head`, `hhea`, `hmtx` and the format 4 table of `cmap` (OpenType specification 1.9, chapters of those names). */
function widthsOf(font) {
  const tables = new Map();
  for (let index = 0; index < font.readUInt16BE(4); index++) {
    const at = 12 + 16 * index;
    tables.set(font.toString("latin1", at, at + 4), font.readUInt32BE(at + 8));
  }
  const unitsPerEm = font.readUInt16BE(tables.get("head") + 18);
  const longMetrics = font.readUInt16BE(tables.get("hhea") + 34);
  const hmtx = tables.get("hmtx");
  const glyphOf = characterMap(font, tables.get("cmap"));
  return (character) => {
    const glyph = glyphOf(character);
    const units = font.readUInt16BE(hmtx + 4 * Math.min(glyph, longMetrics - 1));
    return Math.ceil((1000 * units) / unitsPerEm);
  };
}

function characterMap(font, cmap) {
  for (let index = 0; index < font.readUInt16BE(cmap + 2); index++) {
    const table = cmap + font.readUInt32BE(cmap + 4 + 8 * index + 4);
    if (font.readUInt16BE(table) === 4) return (character) => glyphInFormat4(font, table, character);
  }
  throw new Error("the typeface has no character map of format 4");
}

function glyphInFormat4(font, table, character) {
  const twiceSegments = font.readUInt16BE(table + 6);
  const ends = table + 14;
  const starts = ends + twiceSegments + 2;
  const deltas = starts + twiceSegments;
  const offsets = deltas + twiceSegments;
  for (let at = 0; at < twiceSegments; at += 2) {
    if (font.readUInt16BE(ends + at) < character) continue;
    const start = font.readUInt16BE(starts + at);
    if (start > character) return 0;
    const delta = font.readUInt16BE(deltas + at);
    const offset = font.readUInt16BE(offsets + at);
    if (offset === 0) return (character + delta) & 0xffff;
    const glyph = font.readUInt16BE(offsets + at + offset + 2 * (character - start));
    return glyph === 0 ? 0 : (glyph + delta) & 0xffff;
  }
  return 0;
}
