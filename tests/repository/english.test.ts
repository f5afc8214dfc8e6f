import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { describe, expect, test } from "vitest";
import { trackedFiles } from "./tracked-files.ts";

// Counts habits that make English hard to read, in three kinds of text: comments, texts that a user reads in the product (string
// and template literals), and pages in Markdown. The limits are occurrences per 1,000 words. Those of comments are the rates of
// well-known code bases of the same kind; those of texts and pages are the rates after they were edited, rounded up. A single use
// is fine, a habit is not.

interface Habit {
  readonly pattern: RegExp;
  readonly comments: number;
  readonly texts: number;
  readonly pages: number;
}

const habits: Readonly<Record<string, Habit>> = {
  '"what" as a noun clause': { pattern: /\bwhat\b/gi, comments: 1.5, texts: 0.4, pages: 0.5 },
  '"whatever", "whoever"': { pattern: /\bwh(?:at|o)ever\b/gi, comments: 0.4, texts: 0.1, pages: 0.1 },
  '"stand(s)" for "is"': { pattern: /\bstands?\b/gi, comments: 0.2, texts: 0.1, pages: 0.1 },
  '"tell", "told" for "report"': { pattern: /\b(?:tells?|told)\b/gi, comments: 0.4, texts: 0.2, pages: 0.1 },
  '"nobody", "nothing"': { pattern: /\b(?:nobody|nothing)\b/gi, comments: 1.2, texts: 0.4, pages: 0.2 },
  '"of which", "in which", "by which"': {
    pattern: /\b(?:of|in|by) which\b/gi,
    comments: 1.4,
    texts: 0.1,
    pages: 0.1,
  },
  '"so that"': { pattern: /\bso that\b/gi, comments: 0.6, texts: 0.1, pages: 0.1 },
};

const root = fileURLToPath(new URL("../..", import.meta.url));
const read = (file: string) => readFileSync(`${root}${file}`, "utf8");
const sources = trackedFiles().filter((file) => /\.m?ts$|\.mjs$/.test(file));
const product = sources.filter(
  (file) =>
    /^(?:library|server|extension)\/.*\.ts$/.test(file) && !/\.test\.ts$|tester\.ts$|\/sample-/.test(file),
);
const pages = trackedFiles().filter((file) => file.endsWith(".md") && !file.startsWith("tests/"));

const kinds = [
  { kind: "comments", least: 50_000, found: sources.flatMap((file) => commentsIn(read(file))) },
  {
    kind: "texts",
    least: 15_000,
    found: [...product.flatMap((file) => textsIn(read(file))), ...textsOfJson("extension/package.json")],
  },
  { kind: "pages", least: 25_000, found: pages.map((file) => proseIn(read(file))) },
] as const;

describe.each(kinds)("$kind are read at once", ({ kind, least, found }) => {
  const words = countIn(found, /[a-z]+/gi);

  test("there are enough words to count in", () => expect(words).toBeGreaterThan(least));

  test.each(Object.entries(habits))("%s", (_, habit) => {
    expect((countIn(found, habit.pattern) / words) * 1_000).toBeLessThanOrEqual(habit[kind]);
  });
});

test("a comment is found wherever it is, and a string is none", () => {
  const text = 'const a = "// what"; // what\n/** what */ f(/* what */ `${/* what */ b} // what`);\n// what';
  expect(commentsIn(text)).toEqual(["// what", "/** what */", "/* what */", "/* what */", "// what"]);
});

test("a text is a literal of several words, a template without its holes, and neither an import nor a type", () => {
  const text = `import a from "what a"; let b: "what b"; f("what c", 'what d', "e"); // "what f"
g(\`what \${h("what i")} j \${k}\`);`;
  expect(textsIn(text)).toEqual(["what c", "what d", "what ", "what i", " j "]);
});

test("prose is a page without headings and code", () => {
  expect(proseIn("# What\n\nA `b` c.\n\n```ts\nwhat();\n```\n\n## What\nd")).toBe("\n\nA `b` c.\n\n\n\n\nd");
});

function countIn(texts: readonly string[], pattern: RegExp): number {
  return texts.reduce((sum, text) => sum + (text.match(pattern)?.length ?? 0), 0);
}

function textsIn(text: string): readonly string[] {
  const found: string[] = [];
  const visit = (node: ts.Node) => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node) || ts.isLiteralTypeNode(node)) return;
    const isText =
      ts.isStringLiteralLike(node) ||
      ts.isTemplateHead(node) ||
      ts.isTemplateMiddle(node) ||
      ts.isTemplateTail(node);
    if (isText && /\s/.test(node.text)) found.push(node.text);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile("file.ts", text, ts.ScriptTarget.ESNext, true));
  return found;
}

function textsOfJson(file: string): readonly string[] {
  const found: string[] = [];
  JSON.parse(read(file), (_, value: unknown) => {
    if (typeof value === "string" && value.includes(" ")) found.push(value);
  });
  return found;
}

function proseIn(page: string): string {
  return page.replace(/^```[\s\S]*?^```/gm, "").replace(/^#.*$/gm, "");
}

/** Comment marks within literals are passed over. */
function commentsIn(text: string): readonly string[] {
  const source = ts.createSourceFile("file.ts", text, ts.ScriptTarget.ESNext, false);
  let withoutLiterals = "";
  const visit = (node: ts.Node) => {
    if (ts.isLiteralExpression(node) || ts.isTemplateMiddleOrTemplateTail(node) || ts.isTemplateHead(node)) {
      withoutLiterals += text.slice(withoutLiterals.length, node.getStart(source));
      withoutLiterals += " ".repeat(node.end - withoutLiterals.length);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  withoutLiterals += text.slice(withoutLiterals.length);
  const comments = withoutLiterals.matchAll(/\/\/.*|\/\*[\s\S]*?\*\//g);
  return [...comments].map(({ index, 0: { length } }) => text.slice(index, index + length));
}
