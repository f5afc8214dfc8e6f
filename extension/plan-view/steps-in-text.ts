import { commands, Range, Uri, type ViewColumn, WorkspaceEdit, window, workspace } from "vscode";
import type { TextChange } from "../../server/language/messages.ts";
import { columnFor } from "../diagram/plan-texts.ts";

/** The changes of a text that were made from a view, as far as the editor can still undo them there. */
export interface StepsInText {
  /**
   * Writes edits of one file as one undo step. A sentence if the text stays as it is, which begins with `notMade`: "The lever was not
   * moved".
   */
  write(edits: readonly TextChange[], notMade: string): Promise<string>;
  /** Undoes or redoes in the text, if the last change there was made from the view. A sentence about the outcome. */
  undo(view: ViewColumn | undefined): Promise<string>;
  redo(view: ViewColumn | undefined): Promise<string>;
}

/** The document that was changed last, its version since, and how many of its last steps were ours. */
interface Steps {
  readonly uri: string;
  readonly version: number;
  readonly undoable: number;
  readonly redoable: number;
}

export function createStepsInText(): StepsInText {
  let steps: Steps | undefined;

  const step = async (
    command: "undo" | "redo",
    { undoable, redoable }: { readonly undoable: number; readonly redoable: number },
    view: ViewColumn | undefined,
  ): Promise<string> => {
    const document = steps && workspace.textDocuments.find(({ uri }) => uri.toString() === steps!.uri);
    const left = command === "undo" ? steps?.undoable : steps?.redoable;
    if (!steps || !document || document.version !== steps.version || !left)
      return `The last change was not made here: ${command} it in the text.`;
    // The editor undoes in the text that has the focus.
    await window.showTextDocument(document, {
      viewColumn: columnFor(document.uri, undefined, view),
      preserveFocus: false,
      preview: false,
    });
    await commands.executeCommand(command);
    if (document.version === steps.version) return `The editor could not ${command} it.`;
    steps = {
      uri: steps.uri,
      version: document.version,
      undoable: steps.undoable + undoable,
      redoable: steps.redoable + redoable,
    };
    return command === "undo" ? "Undone in the text." : "Done again in the text.";
  };

  return {
    async write(edits, notMade) {
      const [first] = edits;
      if (!first) return `${notMade}: the text has it already.`;
      if (edits.some(({ uri }) => uri !== first.uri))
        return `${notMade}: its place is written in several files.`;
      const document = await workspace.openTextDocument(Uri.parse(first.uri));
      const before = document.version;
      if (before !== first.version) return `${notMade}: the text changed meanwhile.`;
      const edit = new WorkspaceEdit();
      for (const { range, newText } of edits) {
        const { start, end } = range;
        edit.replace(document.uri, new Range(start.line, start.character, end.line, end.character), newText);
      }
      if (!(await workspace.applyEdit(edit))) return `${notMade}: the editor refused the change.`;
      const key = document.uri.toString();
      const goesOn = steps?.uri === key && steps.version === before;
      steps = {
        ...{ uri: key, version: document.version, redoable: 0 },
        undoable: goesOn ? steps!.undoable + 1 : 1,
      };
      return "";
    },
    undo: (view) => step("undo", { undoable: -1, redoable: 1 }, view),
    redo: (view) => step("redo", { undoable: 1, redoable: -1 }, view),
  };
}
