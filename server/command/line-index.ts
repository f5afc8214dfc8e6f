import { type Position, TextDocument } from "vscode-languageserver-textdocument";

/** Converts offsets of a text into lines and columns as people count them, from 1. Columns are UTF-16 units, as in editors. */
export interface LineIndex {
  positionAt(offset: number): { readonly line: number; readonly column: number };
  /** The text of a line without its line break; undefined past the end. */
  lineText(line: number): string | undefined;
}

export function createLineIndex(text: string): LineIndex {
  const document = TextDocument.create("", "", 0, text);
  return {
    positionAt(offset) {
      const { line, character } = document.positionAt(offset);
      return { line: line + 1, column: character + 1 };
    },
    lineText(line) {
      if (line > document.lineCount) return undefined;
      const [start, end] = [line - 1, line].map((at) => ({ line: at, character: 0 })) as [Position, Position];
      return document.getText({ start, end }).replace(/[\r\n]+$/, "");
    },
  };
}
