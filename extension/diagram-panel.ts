import { Disposable, type ExtensionContext, type LogOutputChannel, Uri, window } from "vscode";
import { editorWords } from "../server/language/plain-words.ts";
import { reasonOf, registerCommand } from "./command.ts";
import { askForDiagram } from "./diagram/ask-for-diagram.ts";
import { readPanelState } from "./diagram/panel-state.ts";
import { createPlanPanel, type PlanPanel, panelType } from "./diagram/plan-panel.ts";
import type { ServerSession } from "./server-session.ts";

/** The command that shows the wiring diagram beside the plan, and its panels: one for each plan. */
export function registerDiagram(
  context: ExtensionContext,
  session: ServerSession,
  log: LogOutputChannel,
): Disposable {
  /** By the root file of the plan. */
  const panels = new Map<string, PlanPanel>();
  const wiring = {
    session,
    log,
    dist: Uri.joinPath(context.extensionUri, "dist"),
    closed: (panel: PlanPanel) => panels.delete(panel.root),
  };

  const showFor = async (file: Uri): Promise<void> => {
    const asked = await askForDiagram(session, file);
    if (asked === "no server") return;
    if (!asked) {
      window.showInformationMessage(
        'No plan here: open a TypeScript or JavaScript file that imports "loomwright", or that such a file imports.',
      );
      return;
    }
    const root = rootOf(asked.uri);
    const open = panels.get(root);
    if (open) open.reveal();
    else panels.set(root, createPlanPanel(wiring, root, { first: asked }));
  };

  return Disposable.from(
    registerCommand("loomwright.showDiagram", async (given: unknown) => {
      const file = given instanceof Uri ? given : window.activeTextEditor?.document.uri;
      try {
        if (file) await showFor(file);
        else window.showInformationMessage("Open a file of the plan, and ask again.");
      } catch (error) {
        window.showErrorMessage(editorWords(`The wiring diagram could not be drawn: ${reasonOf(error)}`));
      }
    }),
    window.registerWebviewPanelSerializer(panelType, {
      async deserializeWebviewPanel(webview, kept) {
        const state = readPanelState(kept);
        const root = rootOf(state.uri);
        // A panel without its plan's address cannot be filled again.
        if (state.uri === "" || panels.has(root)) webview.dispose();
        else panels.set(root, createPlanPanel(wiring, root, { webview, state }));
      },
    }),
    new Disposable(() => {
      for (const panel of [...panels.values()]) panel.dispose();
    }),
  );
}

/** One spelling for each file, independent of the source of its address. */
function rootOf(uri: string): string {
  return Uri.parse(uri).toString();
}
