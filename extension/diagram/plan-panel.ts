import {
  CancellationTokenSource,
  commands,
  Disposable,
  type LogOutputChannel,
  RelativePattern,
  Uri,
  type WebviewPanel,
  window,
  workspace,
} from "vscode";
import type { Diagram } from "../../server/language/messages.ts";
import { editorWords } from "../../server/language/plain-words.ts";
import { reasonOf } from "../command.ts";
import type { ServerSession } from "../server-session.ts";
import { beside, fillTab, wasOvertaken } from "../tab-beside.ts";
import { requestDiagram } from "./ask-for-diagram.ts";
import { type FromPage, readFromPage, type ToPage } from "./messages.ts";
import { pageHtml } from "./page-html.ts";
import { firstView, type PanelState } from "./panel-state.ts";
import { createPlanTexts } from "./plan-texts.ts";
import { shownDiagram } from "./shown-diagram.ts";

/** The diagram of one plan, for as long as its tab is open. */
export interface PlanPanel {
  /** Root file of the plan. */
  readonly root: string;
  reveal(): void;
  dispose(): void;
}

export interface PanelWiring {
  readonly session: ServerSession;
  readonly log: LogOutputChannel;
  /** The only folder that the page may load anything from. */
  readonly dist: Uri;
  closed(panel: PlanPanel): void;
}

/** Opened for the first time, with its first diagram; or restored by the editor after a reload, with its kept state. */
export type PanelInit =
  | { readonly first: Diagram }
  | { readonly webview: WebviewPanel; readonly state: PanelState };

/** The kind of tab, as the editor keeps it over a reload. */
export const panelType = "loomwright.diagram";

export function createPlanPanel(wiring: PanelWiring, root: string, beginning: PanelInit): PlanPanel {
  const { session, log, dist } = wiring;
  const webview =
    "webview" in beginning
      ? beginning.webview
      : window.createWebviewPanel(panelType, "Wiring diagram", beside);
  const texts = createPlanTexts((elements) => post({ type: "cursor", number, elements }));
  let { view, scenario, colours }: Pick<PanelState, "view" | "scenario" | "colours"> =
    "state" in beginning ? beginning.state : { view: firstView, scenario: "", colours: false };
  let diagram = "first" in beginning ? beginning.first : undefined;
  let number = diagram ? 1 : 0;
  /** The pending request for a picture; if a newer one is wanted meanwhile, it is requested after this one. */
  let asking: CancellationTokenSource | undefined;
  let outdated = diagram === undefined;

  const post = (message: ToPage): void => void webview.webview.postMessage(message);
  const trouble = (message: string): void => post({ type: "trouble", number, message });

  const send = (): void => {
    if (!diagram) return;
    webview.title = editorWords(`Wiring diagram: ${diagram.title}`);
    post(shownDiagram(diagram, root, number));
    texts.show({ versions: diagram.versions, elements: diagram.picture?.elements ?? [] });
  };

  const follow = async (): Promise<void> => {
    outdated = true;
    // A hidden tab is updated when it becomes visible.
    if (asking || !webview.visible) return;
    while (outdated && webview.visible) {
      outdated = false;
      asking = new CancellationTokenSource();
      await ask(asking);
      asking.dispose();
      asking = undefined;
    }
  };
  const ask = async ({ token }: CancellationTokenSource): Promise<void> => {
    try {
      const client = await session.client();
      if (!client) return trouble(stopped);
      const asked = { view, colours, ...(scenario === "" ? {} : { scenario }) };
      const answer = await requestDiagram(client, Uri.parse(root), asked, token);
      if (token.isCancellationRequested) return;
      if (!answer) {
        const last = diagram ? " The picture shows its last state." : "";
        return trouble(`${Uri.parse(root).path.split("/").at(-1)} is no longer a plan.${last}`);
      }
      diagram = answer;
      // The choice is kept: while a value is wrong, the plan may have no scenarios for a moment.
      number++;
      send();
    } catch (error) {
      if (token.isCancellationRequested) return;
      if (wasOvertaken(error)) {
        outdated = true;
        return;
      }
      const why = reasonOf(error);
      log.error(`The wiring diagram of ${root}: ${why}`);
      trouble(`The picture could not be drawn again: ${why}`);
    }
  };

  const hear = (said: FromPage): void => {
    switch (said.type) {
      case "ready":
        send();
        if (outdated) void follow();
        return;
      case "choose":
        ({ view, scenario, colours } = said);
        // The pending picture is no longer useful.
        asking?.cancel();
        void follow();
        return;
      case "goTo":
        texts.goTo(said.element, said.take, webview.viewColumn);
        return;
      case "export":
        void commands.executeCommand("loomwright.exportDiagram", Uri.parse(root), {
          view,
          scenario,
          colours,
        });
        return;
      case "leave":
        texts.takeFocus(Uri.parse(root), webview.viewColumn);
        return;
      case "refused":
        log.error(`A wiring diagram of ${root} was not shown, because of ${said.why} in it.`);
        return;
    }
  };

  const panel: PlanPanel = {
    root,
    reveal: () => webview.reveal(undefined, true),
    dispose: () => webview.dispose(),
  };
  // The numbers of the conductors are kept beside the plan; a command writes them, and git may bring them.
  const kept = workspace.createFileSystemWatcher(
    new RelativePattern(Uri.joinPath(Uri.parse(root), ".."), "*.wire-numbers.txt"),
  );
  const renumbered = () => void follow();
  const listening = Disposable.from(
    texts,
    kept,
    kept.onDidCreate(renumbered),
    kept.onDidChange(renumbered),
    kept.onDidDelete(renumbered),
    webview.webview.onDidReceiveMessage((said: unknown) => {
      const heard = readFromPage(said);
      if (heard) hear(heard);
    }),
    webview.onDidChangeViewState(() => {
      if (webview.visible && outdated) void follow();
    }),
    session.onStatus(({ uri, state }) => {
      if (uri !== undefined && state !== "checking" && Uri.parse(uri).toString() === root) void follow();
    }),
    session.onRunning((running) => {
      if (running) void follow();
      else trouble(stopped);
    }),
  );
  webview.onDidDispose(() => {
    asking?.cancel();
    listening.dispose();
    wiring.closed(panel);
  });

  fillTab(webview, dist, "diagram-page", pageHtml);
  return panel;
}

const stopped = "The server has stopped: the picture does not follow the text.";
