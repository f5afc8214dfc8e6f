import { commands, type Disposable, window } from "vscode";
import { editorWords } from "../server/language/plain-words.ts";

/**
 * A command of ours. The editor would show the message of an error that it throws as a notification, with every link in it;
 * here it is shown as text, and the command answers with nothing.
 */
export function registerCommand(
  id: `loomwright.${string}`,
  answer: (...given: unknown[]) => unknown,
): Disposable {
  return commands.registerCommand(id, async (...given: unknown[]) => {
    try {
      return await answer(...given);
    } catch (error) {
      void window.showErrorMessage(editorWords(reasonOf(error)));
      return undefined;
    }
  });
}

/** The message of an error, for a person. It may quote a plan and is not fit to be shown unchanged. */
export function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
