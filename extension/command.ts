import { commands, type Disposable, window } from "vscode";
import { editorWords } from "../server/language/plain-words.ts";

/**
 * One of our commands. The editor would show the message of an error that it throws as a notification, including every link in
 * it; here the message is shown as text, and the command returns undefined.
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

/** The message of an error, for a person. It may quote a plan, so it must not be shown unescaped. */
export function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
