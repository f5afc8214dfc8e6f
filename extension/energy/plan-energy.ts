import {
  CancellationTokenSource,
  Disposable,
  type LogOutputChannel,
  Uri,
  type WebviewPanel,
  window,
  workspace,
} from "vscode";
import type { LanguageClient } from "vscode-languageclient/node";
import type {
  EnergyParams,
  EnergyView,
  energyMethod,
  LeverMove,
  MoveAnswer,
  MoveParams,
  moveMethod,
} from "../../server/language/messages.ts";
import { editorWords } from "../../server/language/plain-words.ts";
import { reasonOf } from "../command.ts";
import { columnFor } from "../diagram/plan-texts.ts";
import type { ServerSession } from "../server-session.ts";
import { beside, fillTab, wasOvertaken } from "../tab-beside.ts";
import { type FromPage, readFromPage, type ToPage, type ViewState } from "./messages.ts";
import { createMoves } from "./moves.ts";
import { energyPageHtml } from "./page-html.ts";

/** The view of energy of one plan, for as long as its tab is open. */
export interface PlanEnergy {
  /** Root file of the plan. */
  readonly root: string;
  reveal(): void;
  dispose(): void;
}

interface ViewWiring {
  readonly session: ServerSession;
  readonly log: LogOutputChannel;
  /** The only folder that the page may load anything from. */
  readonly dist: Uri;
  closed(view: PlanEnergy): void;
}

/** The kind of tab, as the editor keeps it over a reload. */
export const viewType = "loomwright.energy";

export function createPlanEnergy(
  { session, log, dist, closed }: ViewWiring,
  {
    root,
    webview = window.createWebviewPanel(viewType, "Energy", beside),
    state,
  }: {
    readonly root: string;
    /** Restored by the editor after a reload; else a tab is opened. */
    readonly webview?: WebviewPanel;
    readonly state?: ViewState;
  },
): PlanEnergy {
  const moves = createMoves();
  let asked: Pick<EnergyParams, "period" | "bank" | "month"> = state
    ? { period: state.period, bank: state.bank, ...(state.month === undefined ? {} : { month: state.month }) }
    : {};
  /** Of the text; a moved lever does not change it. */
  let energy: EnergyView | undefined;
  let number = 0;
  /** The lever that is away from its number in the text. */
  let moved: LeverMove | undefined;
  let asking: CancellationTokenSource | undefined;
  let outdated = true;
  /** The page shows the least single changes, and asks for them again when it is loaded. */
  let least = false;

  const post = (message: ToPage): void => void webview.webview.postMessage(message);
  const trouble = (message: string): void => post({ type: "say", about: "figures", message });
  const report = (message: string): void => post({ type: "say", about: "action", message });
  const send = (shown: EnergyView, at: LeverMove | undefined): void => {
    webview.title = editorWords(`Energy: ${shown.title}`);
    post({ type: "energy", number, root, energy: shown, ...(at ? { moved: at } : {}) });
  };

  /** One request is on its way; a newer state of text or lever cancels it and is asked for after it. */
  const follow = async (): Promise<void> => {
    outdated = true;
    asking?.cancel();
    if (asking || !webview.visible) return;
    while (outdated && webview.visible) {
      outdated = false;
      asking = new CancellationTokenSource();
      await ask(asking, moved);
      asking.dispose();
      asking = undefined;
    }
  };
  const ask = async ({ token }: CancellationTokenSource, move: LeverMove | undefined): Promise<void> => {
    try {
      const client = await session.client();
      if (!client) return trouble(stopped);
      const params = {
        ...(await documentOf(client, root)),
        ...asked,
        ...(least && { least }),
        ...(move ? { move } : {}),
      };
      const method = "loomwright/energy" satisfies typeof energyMethod;
      const answer = await client.sendRequest<EnergyView | null>(method, params, token);
      if (token.isCancellationRequested) return;
      if (!answer) return trouble(`${Uri.parse(root).path.split("/").at(-1)} is no longer a plan.`);
      if (!move) {
        energy = answer;
        number++;
      }
      send(answer, move);
    } catch (error) {
      if (token.isCancellationRequested) return;
      if (wasOvertaken(error)) {
        // A lever of an older text is dropped; the figures of the newer one follow.
        moved = undefined;
        outdated = true;
        return;
      }
      const why = reasonOf(error);
      log.error(`The energy of ${root}: ${why}`);
      trouble(`The figures could not be worked out again: ${why}`);
    }
  };

  const letGo = async (said: Extract<FromPage, { type: "letGo" }>): Promise<void> => {
    moved = undefined;
    asking?.cancel();
    const message = await written(said);
    if (message === "") return;
    if (energy) send(energy, undefined);
    report(message);
  };
  const written = async ({ number: of, lever, value }: Extract<FromPage, { type: "letGo" }>) => {
    if (!energy || of !== number) return "The lever was not moved: the text changed meanwhile.";
    try {
      const client = await session.client();
      if (!client) return stopped;
      const params: MoveParams = {
        ...(await documentOf(client, root)),
        versions: Object.entries(energy.versions).map(([uri, version]) => ({ uri, version })),
        move: { lever, value },
      };
      const method = "loomwright/moveLever" satisfies typeof moveMethod;
      const answer = await client.sendRequest<MoveAnswer>(method, params);
      return answer.state === "dropped" ? answer.message : await moves.write(answer.edits);
    } catch (error) {
      if (wasOvertaken(error)) return "The lever was not moved: the text changed meanwhile.";
      log.error(`A lever of ${root}: ${reasonOf(error)}`);
      return `The lever was not moved: ${reasonOf(error)}`;
    }
  };

  const again = async (command: "undo" | "redo"): Promise<void> => {
    const message = await moves[command](webview.viewColumn);
    webview.reveal(undefined, false);
    report(message);
  };

  const hear = (said: FromPage): void => {
    switch (said.type) {
      case "ready":
        if (energy) send(energy, undefined);
        void follow();
        return;
      case "choose":
        asked = { period: said.period, bank: said.bank, ...(said.month < 12 ? { month: said.month } : {}) };
        void follow();
        return;
      case "least":
        least = said.wanted;
        if (least) void follow();
        return;
      case "move":
        moved = { lever: said.lever, value: said.value };
        void follow();
        return;
      case "leaveAsIs":
        moved = undefined;
        void follow();
        return;
      case "letGo":
        void letGo(said);
        return;
      case "undo":
      case "redo":
        void again(said.type).catch((error) => report(reasonOf(error)));
        return;
      case "leave":
        void workspace.openTextDocument(Uri.parse(root)).then((document) =>
          window.showTextDocument(document, {
            viewColumn: columnFor(document.uri, undefined, webview.viewColumn),
            preview: false,
          }),
        );
        return;
      case "refused":
        log.error(`A chart of ${root} was not shown, because of ${said.why} in it.`);
        return;
    }
  };

  const view: PlanEnergy = {
    root,
    reveal: () => webview.reveal(undefined, true),
    dispose: () => webview.dispose(),
  };
  const listening = Disposable.from(
    webview.webview.onDidReceiveMessage((said: unknown) => {
      const heard = readFromPage(said);
      if (heard) hear(heard);
    }),
    webview.onDidChangeViewState(() => {
      if (webview.visible && outdated) void follow();
    }),
    session.onStatus(({ uri, state: is }) => {
      if (uri === undefined || is === "checking" || Uri.parse(uri).toString() !== root) return;
      // The text is newer than the lever: its number may be gone.
      moved = undefined;
      void follow();
    }),
    session.onRunning((running) => {
      if (running) void follow();
      else trouble(stopped);
    }),
  );
  webview.onDidDispose(() => {
    asking?.cancel();
    listening.dispose();
    closed(view);
  });

  fillTab(webview, dist, "energy-page", energyPageHtml);
  return view;
}

const stopped = "The server has stopped: the figures do not follow the text.";

/** The server reads only open files, and the file of a view may be closed. */
async function documentOf(client: LanguageClient, root: string) {
  const file = Uri.parse(root);
  if (file.scheme === "file") await workspace.openTextDocument(file).then(undefined, () => undefined);
  return { textDocument: { uri: client.code2ProtocolConverter.asUri(file) } };
}
