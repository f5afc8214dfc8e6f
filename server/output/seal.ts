import { createHash } from "node:crypto";
import { extname } from "node:path";
import { csvRecords } from "./csv-records.ts";
import { chunkBefore, withoutChunk } from "./png-chunks.ts";

/**
 * A file in its written form: with a digest of its content, at a place that its format allows. A file whose digest matches is
 * ours to replace; any other may contain somebody's changes. For an extension that is not in the table, the content stays as it
 * is.
 */
export function sealed(path: string, content: Uint8Array | string): Uint8Array {
  const bytes = Buffer.from(content as Uint8Array);
  return kinds[extname(path).toLowerCase()]?.seal(bytes) ?? bytes;
}

/** Whether a file is exactly as it was sealed. Line endings, and the layout of JSON and CSV, are ignored. */
export function isAsSealed(path: string, bytes: Uint8Array): boolean {
  return kinds[extname(path).toLowerCase()]?.holds(Buffer.from(bytes)) ?? false;
}

interface Kind {
  seal(content: Buffer): Buffer;
  holds(file: Buffer): boolean;
}

/** A comment in its last line. */
const withComment: Kind = {
  seal: (content) =>
    Buffer.from(`${content}<!-- made by Loomwright, sha256 ${digestOfText(String(content))} -->\n`),
  holds(file) {
    const text = textIn(file);
    const [line, digest] = /<!-- made by Loomwright, sha256 ([0-9a-f]{64}) -->\s*$/.exec(text) ?? [];
    return line !== undefined && digest === digestOfText(text.slice(0, text.length - line.length));
  },
};

const kinds: Readonly<Record<string, Kind>> = {
  ".svg": withComment,
  ".html": withComment,
  ".md": withComment,
  /** A comment before the end. */
  ".dxf": {
    seal: (content) => {
      const text = withoutDxfEnd(String(content));
      return Buffer.from(`${text}999\nmade by Loomwright, sha256 ${digestOfText(text)}\n${dxfEnd}`);
    },
    holds(file) {
      const text = withoutDxfEnd(textIn(file));
      const [lines, digest] = /999\nmade by Loomwright, sha256 ([0-9a-f]{64})\n$/.exec(text) ?? [];
      return lines !== undefined && digest === digestOfText(text.slice(0, text.length - lines.length));
    },
  },
  ".json": {
    seal(content) {
      const text = String(content);
      const end = text.lastIndexOf("\n}");
      return Buffer.from(
        `${text.slice(0, end)},\n  "sha256": "${digestOfJson(JSON.parse(text))}"${text.slice(end)}`,
      );
    },
    holds(file) {
      try {
        const { sha256, ...content } = JSON.parse(textIn(file)) as { readonly sha256?: unknown };
        return sha256 === digestOfJson(content);
      } catch {
        return false;
      }
    },
  },
  /** The title of one more column, whose cells are empty. */
  ".csv": {
    seal(content) {
      const text = String(content);
      const records = csvRecords(text);
      const title = `${csvMark}${digestOfCells(records.map(({ cells }) => cells))}`;
      const lines = records.map(({ end }, index) => {
        const from = index === 0 ? 0 : records[index - 1]!.end;
        return `${text.slice(from, end)},${index === 0 ? title : ""}`;
      });
      return Buffer.from(`${lines.join("")}${text.slice(records.at(-1)?.end ?? 0)}`);
    },
    holds(file) {
      const records = csvRecords(textIn(file)).map(({ cells }) => cells);
      const title = records[0]?.at(-1) ?? "";
      const isEmpty = records.slice(1).every((cells) => cells.at(-1) === "");
      return isEmpty && title === `${csvMark}${digestOfCells(records.map((cells) => cells.slice(0, -1)))}`;
    },
  },
  /** A comment after the end; programs that add to a PDF add after that. */
  ".pdf": {
    seal: (content) => Buffer.concat([content, Buffer.from(`${pdfMark}${digestOf(content)}\n`)]),
    holds(file) {
      const at = file.lastIndexOf(pdfMark);
      return at >= 0 && file.toString("latin1", at) === `${pdfMark}${digestOf(file.subarray(0, at))}\n`;
    },
  },
  ".png": {
    seal: (content) => chunkBefore(content, `${pngMark}${digestOf(content)}`),
    holds(file) {
      const found = withoutChunk(file, pngMark);
      return found !== undefined && file.equals(chunkBefore(found, `${pngMark}${digestOf(found)}`));
    },
  },
};

const dxfEnd = "0\nEOF\n";

function withoutDxfEnd(text: string): string {
  return text.endsWith(dxfEnd) ? text.slice(0, -dxfEnd.length) : text;
}

/** Begins the title of the column that seals a CSV. */
export const csvMark = "madeByLoomwright_";
const pdfMark = "%Loomwright sha256 ";
const pngMark = "Loomwright\0sha256 ";

/** Without the byte order mark and line endings that an editor or git may change. */
function textIn(file: Buffer): string {
  return file
    .toString("utf8")
    .replace(/^\uFEFF/, "")
    .replaceAll("\r\n", "\n");
}

function digestOf(content: Uint8Array | string): string {
  return createHash("sha256").update(content).digest("hex");
}

function digestOfText(text: string): string {
  return digestOf(text.replaceAll("\r\n", "\n").trimEnd());
}

function digestOfJson(value: unknown): string {
  return digestOf(JSON.stringify(value));
}

/** Short, because it is visible in a spreadsheet. Its column title begins with a letter, to avoid looking like a number. */
function digestOfCells(records: readonly (readonly string[])[]): string {
  const plain = records.map((cells) => cells.map((cell) => cell.replaceAll("\r\n", "\n")));
  return digestOf(JSON.stringify(plain)).slice(0, 16);
}
