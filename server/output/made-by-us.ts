import { extname } from "node:path";

/**
 * Whether a file that is about to be written over came from here, told by what it holds and never by its name alone: each kind
 * carries a mark of its maker, a CSV its row of column titles, which has to be that of the new content. An empty file has
 * nothing to lose and counts as ours. Of an ending that is not in the table nothing else does.
 */
export function madeByUs(path: string, before: Uint8Array, now: Uint8Array | string): boolean {
  if (before.length === 0) return true;
  return marks[extname(path).toLowerCase()]?.(before, now) ?? false;
}

type Mark = (before: Uint8Array, now: Uint8Array | string) => boolean;

const marks: Readonly<Record<string, Mark>> = {
  ".svg": (before) => /<metadata>[^<]*\bLoomwright\b|<!-- made by Loomwright\b/.test(text(before)),
  ".html": (before) => /<meta name="generator" content="Loomwright\b/.test(text(before)),
  ".md": (before) => text(before).trimEnd().endsWith("<!-- made by Loomwright -->"),
  ".json": (before) => toolOf(text(before))?.toLowerCase() === "loomwright",
  ".csv": (before, now) => firstLine(text(before)) === firstLine(typeof now === "string" ? now : text(now)),
  ".pdf": (before) => producerOf(latin1(before))?.startsWith("Loomwright ") ?? false,
  ".png": (before) =>
    latin1(before).startsWith("\u0089PNG") && latin1(before).includes("tEXtSoftware\0Loomwright"),
};

function text(bytes: Uint8Array): string {
  // Without its byte order mark, which a spreadsheet may have put there.
  return new TextDecoder().decode(bytes);
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

/** What stands behind /Producer in the information dictionary, there or in an object of its own. */
function producerOf(pdf: string): string | undefined {
  if (!pdf.startsWith("%PDF-")) return undefined;
  const named = /\/Producer (?:\(([^)]*)\)|(\d+) 0 R)/.exec(pdf);
  return named?.[1] ?? new RegExp(`\n${named?.[2]} 0 obj\n\\(([^)]*)\\)`).exec(pdf)?.[1];
}

function firstLine(csv: string): string | undefined {
  return csv.split(/\r?\n/, 1)[0];
}
