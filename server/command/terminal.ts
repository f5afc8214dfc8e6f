import { styleText } from "node:util";

/** The capabilities of the screen that the command line writes to. */
export interface Terminal {
  readonly colour: boolean;
  /** A progress line, rewritten in place, is only for a person who is watching. */
  readonly progress: boolean;
}

interface Screen {
  readonly isTTY?: boolean;
}

/** Colour only on a terminal, and never if NO_COLOR is set (and not empty) or the terminal is "dumb". */
export function terminalFor(out: Screen, err: Screen, env: NodeJS.ProcessEnv): Terminal {
  const plain = Boolean(env.NO_COLOR) || env.TERM === "dumb";
  return { colour: Boolean(out.isTTY) && !plain, progress: Boolean(err.isTTY) && env.TERM !== "dumb" };
}

const styles = {
  error: ["red", "bold"],
  warning: ["yellow", "bold"],
  info: ["cyan"],
  hint: ["dim"],
  strong: ["bold"],
  faint: ["dim"],
  good: ["green"],
} as const;

type Style = keyof typeof styles;

/** Wraps text in terminal colours, or leaves it as it is. */
export type Paint = (style: Style, text: string) => string;

export function paintFor({ colour }: Terminal): Paint {
  // Whether to colour is decided by the screen that the terminal was made for, not by this process's own output.
  return colour
    ? (style, text) => styleText([...styles[style]], text, { validateStream: false })
    : (_, text) => text;
}

/**
 * A stranger's plan may hold escape sequences or marks that reverse the writing direction. Shown as visible code points, they can
 * neither repaint the screen nor make a number read backwards. Nor can the text give a command to a continuous integration
 * service that reads the log: such commands begin a line with `::`, or follow `##[` or `##vso[` anywhere. Tabs become single
 * spaces, which keeps columns aligned.
 */
export function printable(text: string): string {
  return text.replaceAll("\t", " ").replace(unprintable, visible).replace(order, visible);
}

function visible(character: string): string {
  return `⟨U+${character.codePointAt(0)!.toString(16).toUpperCase().padStart(4, "0")}⟩`;
}

const order = /(?<=^\s*):(?=:)|#(?=#(?:vso)?\[)/gi;

/** Control characters, and the bidirectional and zero-width formatting characters. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
const unprintable = /[\u0000-\u001f\u007f-\u009f\u061c\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]/g;
