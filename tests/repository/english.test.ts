import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { describe, expect, test } from "vitest";
import { trackedFiles } from "./tracked-files.ts";

// Counts habits that make a comment hard to read. The limits are occurrences per 1,000 words of comments; well-known code bases
// of the same kind are below them. A single use is fine, a habit is not.

const limits: Readonly<Record<string, { readonly pattern: RegExp; readonly mostPer1000: number }>> = {
  '"what" as a noun clause': { pattern: /\bwhat\b/gi, mostPer1000: 1.5 },
  '"whatever", "whoever"': { pattern: /\bwh(?:at|o)ever\b/gi, mostPer1000: 0.4 },
  '"stand(s)" for "is"': { pattern: /\bstands?\b/gi, mostPer1000: 0.2 },
  '"tell", "told" for "report"': { pattern: /\b(?:tells?|told)\b/gi, mostPer1000: 0.4 },
  '"nobody", "nothing"': { pattern: /\b(?:nobody|nothing)\b/gi, mostPer1000: 1.2 },
  '"of which", "in which", "by which"': { pattern: /\b(?:of|in|by) which\b/gi, mostPer1000: 1.4 },
  '"so that"': { pattern: /\bso that\b/gi, mostPer1000: 0.6 },
};

const root = fileURLToPath(new URL("../..", import.meta.url));
const sources = trackedFiles().filter((file) => /\.m?ts$|\.mjs$/.test(file));
const comments = sources.flatMap((file) => commentsIn(readFileSync(`${root}${file}`, "utf8")));
const words = comments.reduce((sum, comment) => sum + (comment.match(/[a-z]+/gi)?.length ?? 0), 0);

test("there are comments to count in", () => expect(words).toBeGreaterThan(50_000));

describe("comments are read at once", () => {
  test.each(Object.entries(limits))("%s", (_, { pattern, mostPer1000 }) => {
    const count = comments.reduce((sum, comment) => sum + (comment.match(pattern)?.length ?? 0), 0);
    expect((count / words) * 1_000).toBeLessThanOrEqual(mostPer1000);
  });
});

test("a comment is found wherever it is, and a string is none", () => {
  const text = 'const a = "// what"; // what\n/** what */ f(/* what */ `${/* what */ b} // what`);\n// what';
  expect(commentsIn(text)).toEqual(["// what", "/** what */", "/* what */", "/* what */", "// what"]);
});

function commentsIn(text: string): readonly string[] {
  const source = ts.createSourceFile("file.ts", text, ts.ScriptTarget.ESNext, true);
  const found = new Map<number, string>();
  const take = (ranges: readonly ts.CommentRange[] | undefined) => {
    for (const { pos, end } of ranges ?? []) found.set(pos, text.slice(pos, end));
  };
  const visit = (node: ts.Node) => {
    take(ts.getLeadingCommentRanges(text, node.getFullStart()));
    take(ts.getTrailingCommentRanges(text, node.getEnd()));
    for (const child of node.getChildren(source)) visit(child);
  };
  visit(source);
  return [...found].sort(([a], [b]) => a - b).map(([, comment]) => comment);
}
