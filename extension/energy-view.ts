import { Disposable, type ExtensionContext, type LogOutputChannel, Uri, window } from "vscode";
import type { EnergyView, energyMethod } from "../server/language/messages.ts";
import { editorWords } from "../server/language/plain-words.ts";
import { reasonOf, registerCommand } from "./command.ts";
import { readViewState } from "./energy/messages.ts";
import { createPlanEnergy, type PlanEnergy, viewType } from "./energy/plan-energy.ts";
import type { ServerSession } from "./server-session.ts";

/** The command that shows whether the banks keep up beside the plan, and its views: one for each plan. */
export function registerEnergy(
  context: ExtensionContext,
  session: ServerSession,
  log: LogOutputChannel,
): Disposable {
  /** By the root file of the plan. */
  const views = new Map<string, PlanEnergy>();
  const wiring = {
    session,
    log,
    dist: Uri.joinPath(context.extensionUri, "dist"),
    closed: (view: PlanEnergy) => views.delete(view.root),
  };

  const showFor = async (file: Uri): Promise<void> => {
    const client = await session.client();
    if (!client) return;
    const method = "loomwright/energy" satisfies typeof energyMethod;
    const textDocument = { uri: client.code2ProtocolConverter.asUri(file) };
    const found = await client.sendRequest<EnergyView | null>(method, { textDocument });
    if (!found) {
      window.showInformationMessage(
        'No plan here: open a TypeScript or JavaScript file that imports "loomwright", or that such a file imports.',
      );
      return;
    }
    const root = rootOf(found.uri);
    const open = views.get(root);
    if (open) open.reveal();
    else views.set(root, createPlanEnergy(wiring, { root }));
  };

  return Disposable.from(
    registerCommand("loomwright.showEnergy", async (given: unknown) => {
      const file = given instanceof Uri ? given : window.activeTextEditor?.document.uri;
      try {
        if (file) await showFor(file);
        else window.showInformationMessage("Open a file of the plan, and ask again.");
      } catch (error) {
        window.showErrorMessage(editorWords(`The energy could not be shown: ${reasonOf(error)}`));
      }
    }),
    window.registerWebviewPanelSerializer(viewType, {
      async deserializeWebviewPanel(webview, kept) {
        const state = readViewState(kept);
        const root = rootOf(state.uri);
        // A view without its plan's address cannot be filled again.
        if (state.uri === "" || views.has(root)) webview.dispose();
        else views.set(root, createPlanEnergy(wiring, { root, webview, state }));
      },
    }),
    new Disposable(() => {
      for (const view of [...views.values()]) view.dispose();
    }),
  );
}

/** One spelling for each file, independent of the source of its address. */
function rootOf(uri: string): string {
  return Uri.parse(uri).toString();
}
