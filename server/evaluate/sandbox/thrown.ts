import type { RunModule, Stopped } from "./contract.ts";

type Place = NonNullable<Extract<Stopped, { why: "error" }>["at"]>;

/** One line of at most 300 characters, without line breaks or characters that change its direction. */
export function oneLine(message: string): string {
  const line = message
    .replace(/[\p{Cc}\p{Zl}\p{Zp}\s]+/gu, " ")
    .replace(/\p{Bidi_Control}/gu, "")
    .trim();
  return line.length <= 300 ? line : `${line.slice(0, 299)}…`;
}

/**
 * The innermost position of a stack in one of the plan's modules. A plan may have made up the stack's text, so only an existing
 * line and column are used.
 */
export function placeInStack(stack: string, modules: readonly RunModule[]): Place | undefined {
  for (const frame of stack.split("\n")) {
    const [, uri, line, column] = /^\s*at (?:.* \()?(.+?):(\d+):(\d+)\)?$/.exec(frame) ?? [];
    const module = uri === undefined ? undefined : modules.find((candidate) => candidate.uri === uri);
    const text = module?.js.split("\n")[Number(line) - 1];
    if (module === undefined || text === undefined) continue;
    return { uri: module.uri, line: Number(line), column: utf16Column(text, Number(column)) };
  }
  return undefined;
}

/** The engine counts columns in bytes of UTF-8, from 1. */
function utf16Column(line: string, utf8Column: number): number {
  let bytes = 0;
  let units = 0;
  for (const character of line) {
    if (bytes >= utf8Column - 1) break;
    bytes += Buffer.byteLength(character);
    units += character.length;
  }
  return units + 1;
}
