import { extname } from "node:path";
import { changedRows } from "./changed-rows.ts";
import { csvMark, isAsSealed } from "./seal.ts";

/**
 * Why a file may not be overwritten without being asked for, as a clause; undefined: it is ours, exactly as written, or empty.
 * `now` is the content that would replace it: rows of a list that were filled in or changed since are named.
 */
export function whyNotOurs(path: string, before: Uint8Array, now: Uint8Array | string): string | undefined {
  if (before.length === 0 || isAsSealed(path, before)) return undefined;
  if (!(marks[extname(path).toLowerCase()]?.(before, now) ?? false)) return "was not made by Loomwright";
  const rows = changedRows(path, text(before), typeof now === "string" ? now : text(now));
  if (rows.length === 0) return "was changed since Loomwright wrote it, or was written by an earlier version";
  const named = rows.slice(0, mostNamed).map((row) => `"${row}"`);
  const more = rows.length > named.length ? ` and ${rows.length - named.length} more` : "";
  return `holds entries that Loomwright did not write (rows ${named.join(", ")}${more})`;
}

const mostNamed = 10;

type Mark = (before: Uint8Array, now: Uint8Array | string) => boolean;

/** The maker's mark of each kind, of this version and of earlier ones. */
const marks: Readonly<Record<string, Mark>> = {
  ".svg": (before) => /<metadata>[^<]*\bLoomwright\b|<!-- made by Loomwright\b/.test(text(before)),
  ".html": (before) => /<meta name="generator" content="Loomwright\b/.test(text(before)),
  ".md": (before) => text(before).includes("<!-- made by Loomwright"),
  ".json": (before) => toolOf(text(before))?.toLowerCase() === "loomwright",
  // Before seals existed, a file could be recognised only by its column titles.
  ".csv": (before, now) => {
    const line = firstLine(text(before));
    return (
      line.includes(csvMark) || line === firstLine(typeof now === "string" ? withoutMark(now) : text(now))
    );
  },
  ".dxf": (before) => /\n999\nmade by Loomwright\b/.test(text(before)),
  ".pdf": (before) => producerOf(latin1(before))?.startsWith("Loomwright ") ?? false,
  ".png": (before) =>
    latin1(before).startsWith("\u0089PNG") && latin1(before).includes("tEXtSoftware\0Loomwright"),
};

function text(bytes: Uint8Array): string {
  // Drops its byte order mark, which a spreadsheet may have added.
  return new TextDecoder().decode(bytes);
}

function withoutMark(content: string): string {
  return content.replace(/^\uFEFF/, "");
}

/** One character a byte, for kinds that are not text. */
function latin1(bytes: Uint8Array): string {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString("latin1");
}

function toolOf(json: string): string | undefined {
  try {
    const { tool } = JSON.parse(json) as { readonly tool?: { readonly name?: unknown } };
    return typeof tool?.name === "string" ? tool.name : undefined;
  } catch {
    return undefined;
  }
}

/** The value of /Producer in the information dictionary, inline or in an object of its own. */
function producerOf(pdf: string): string | undefined {
  if (!pdf.startsWith("%PDF-")) return undefined;
  const named = /\/Producer (?:\(([^)]*)\)|(\d+) 0 R)/.exec(pdf);
  return named?.[1] ?? new RegExp(`\n${named?.[2]} 0 obj\n\\(([^)]*)\\)`).exec(pdf)?.[1];
}

function firstLine(csv: string): string {
  return csv.split(/\r?\n/, 1)[0]!;
}
