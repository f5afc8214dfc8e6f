import {
  Disposable,
  type ExtensionContext,
  type LogOutputChannel,
  Uri,
  type WebviewPanel,
  window,
} from "vscode";
import { editorWords } from "../../server/language/plain-words.ts";
import { reasonOf, registerCommand } from "../command.ts";
import type { ServerSession } from "../server-session.ts";
import type { PlanView, ViewKind, ViewWiring } from "./plan-view.ts";

/** The state that the editor keeps for a hidden page, and over a reload of the window. */
interface KeptView {
  /** Root file of the plan. */
  readonly uri: string;
}

interface Registered<State extends KeptView> {
  readonly kind: ViewKind;
  readonly command: `loomwright.${string}`;
  /** "The energy could not be shown". */
  readonly notOpened: string;
  /** The kept state may be damaged, or from another version. */
  readState(kept: unknown): State;
  create(
    wiring: ViewWiring,
    init: { readonly root: string; readonly webview?: WebviewPanel; readonly state?: State },
  ): PlanView;
}

/** The command that shows a view beside its plan, and its views: one for each plan. */
export function registerViews<State extends KeptView>(
  context: ExtensionContext,
  session: ServerSession,
  log: LogOutputChannel,
  { kind, command, notOpened, readState, create }: Registered<State>,
): Disposable {
  /** By the root file of the plan. */
  const views = new Map<string, PlanView>();
  const wiring: ViewWiring = {
    session,
    log,
    dist: Uri.joinPath(context.extensionUri, "dist"),
    closed: (view) => views.delete(view.root),
  };

  const showFor = async (file: Uri): Promise<void> => {
    const client = await session.client();
    if (!client) return;
    const textDocument = { uri: client.code2ProtocolConverter.asUri(file) };
    const found = await client.sendRequest<KeptView | null>(kind.method, { textDocument });
    if (!found) {
      window.showInformationMessage(
        'No plan here: open a TypeScript or JavaScript file that imports "loomwright", or that such a file imports.',
      );
      return;
    }
    const root = rootOf(found.uri);
    const open = views.get(root);
    if (open) open.reveal();
    else views.set(root, create(wiring, { root }));
  };

  return Disposable.from(
    registerCommand(command, async (given: unknown) => {
      const file = given instanceof Uri ? given : window.activeTextEditor?.document.uri;
      try {
        if (file) await showFor(file);
        else window.showInformationMessage("Open a file of the plan, and ask again.");
      } catch (error) {
        window.showErrorMessage(editorWords(`${notOpened}: ${reasonOf(error)}`));
      }
    }),
    window.registerWebviewPanelSerializer(kind.type, {
      async deserializeWebviewPanel(webview, kept) {
        const state = readState(kept);
        const root = rootOf(state.uri);
        // A view without its plan's address cannot be filled again.
        if (state.uri === "" || views.has(root)) webview.dispose();
        else views.set(root, create(wiring, { root, webview, state }));
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
