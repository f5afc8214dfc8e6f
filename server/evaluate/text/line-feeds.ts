import ts from "typescript";

/**
 * JavaScript of the same length and the same meaning whose lines are separated by line feeds alone: every place that the sandbox
 * reports can then be found by counting them. The sandbox's engine counts a lone carriage return everywhere but in a block comment,
 * and U+2028 and U+2029 only between tokens.
 *
 * The language reads a carriage return in a template, and behind the backslash of a string, as a line feed. The two separators
 * belong to the value of a string or a template, and stay there.
 */
export function withLineFeeds(js: string, source: ts.SourceFile): string {
  const text = js.replace(/\r(?!\n)/g, "\n");
  if (!separator.test(text)) return text;
  const characters = [...stringsWithSeparators(source)].reduce(
    (kept, { start, end }) => kept.fill(true, start, end),
    new Array<boolean>(text.length).fill(false),
  );
  return text.replace(/[\u2028\u2029]/g, (found, at: number) => (characters[at] ? found : "\n"));
}

const separator = /[\u2028\u2029]/;

function* stringsWithSeparators(
  source: ts.SourceFile,
): Iterable<{ readonly start: number; readonly end: number }> {
  const inside: ts.Node[] = [source];
  for (let node = inside.pop(); node; node = inside.pop()) {
    const start = node.getStart(source);
    if (!separator.test(source.text.slice(start, node.end))) continue;
    if (ts.isStringLiteralLike(node) || ts.isTemplateMiddleOrTemplateTail(node) || ts.isTemplateHead(node))
      yield { start, end: node.end };
    else ts.forEachChild(node, (child) => void inside.push(child));
  }
}
