import {
  type CancellationToken,
  CancellationTokenSource,
  Disposable,
  type LogOutputChannel,
  Uri,
  type WebviewPanel,
  window,
  workspace,
} from "vscode";
import { type LanguageClient, WorkDoneProgress } from "vscode-languageclient/node";
import type { MoveAnswer, ShownVersions } from "../../server/language/messages.ts";
import { editorWords } from "../../server/language/plain-words.ts";
import { reasonOf } from "../command.ts";
import { columnFor } from "../diagram/plan-texts.ts";
import type { PageFrame } from "../page-frame.ts";
import type { ServerSession } from "../server-session.ts";
import { beside, fillTab, wasOvertaken } from "../tab-beside.ts";
import { createStepsInText } from "./steps-in-text.ts";

/** A view of one plan in which changes are tried and then written into the text, for as long as its tab is open. */
export interface PlanView {
  /** Root file of the plan. */
  readonly root: string;
  reveal(): void;
  dispose(): void;
}

/** The data that a view shows. */
export interface PlanAnswer {
  readonly title: string;
  readonly versions: Readonly<Record<string, number>>;
}

/** The properties of one kind of view. */
export interface ViewKind {
  /** The kind of tab, as the editor keeps it over a reload. */
  readonly type: string;
  /** Before the plan's name in the tab: "Energy". */
  readonly title: string;
  /** The name of its script and its style sheet. */
  readonly page: string;
  html(frame: PageFrame): string;
  /** The request for its data, and the one for the edits of a change. */
  readonly method: string;
  readonly moveMethod: string;
  /** "The server has stopped: the figures do not follow the text." */
  readonly stopped: string;
  /** "The figures are still being worked out." */
  readonly late: string;
  /** "The figures could not be worked out again". */
  readonly notShown: string;
  /** "The lever was not moved". */
  readonly notMade: string;
}

/** The part of a view that differs from kind to kind. `Move`: a change that can be tried. */
export interface ViewContent<Answer extends PlanAnswer, Move> {
  /** The parameters of both requests, without the document. Those of a change belong to the versions of the answer. */
  asked(versions: ShownVersions, move: Move | undefined): object;
  edited(versions: ShownVersions, move: Move): object;
  /** The message that shows an answer. */
  shown(answer: Answer, at: { readonly number: number; readonly move: Move | undefined }): object;
  /** The beginning of a sentence about a change that was not made, if it is not that of the kind. */
  notMade?(move: Move): string | undefined;
  /** A message of the page, which is untrusted; undefined if it has no meaning, or the content acts on it itself. */
  heard(said: unknown): Heard<Move> | undefined;
  dispose?(): void;
}

/** A search of the server that takes a while. */
interface PlanSearch {
  readonly method: string;
  /** Without the document and the versions that are shown. */
  readonly params: object;
  readonly token: CancellationToken;
  /** A sentence. */
  progress(message: string): void;
}

/** Answers a search about the plan of a view, or rejects with the reason. */
export type SearchPlan = <Found>(search: PlanSearch) => Promise<Found>;

type Heard<Move> =
  /** `ready`: the page is loaded and still empty. `again`: it wants other data. */
  | { readonly type: "ready" | "again" | "leaveAsIs" | "undo" | "redo" | "leave" }
  /** Show a change, and leave the text as it is. */
  | { readonly type: "move"; readonly move: Move }
  /** Write it. `number` is that of the answer that it belongs to. */
  | { readonly type: "letGo"; readonly number: number; readonly move: Move }
  /** A picture was not shown, because it contains something that none of ours has. */
  | { readonly type: "refused"; readonly why: string };

export interface ViewWiring {
  readonly session: ServerSession;
  readonly log: LogOutputChannel;
  /** The only folder that the page may load anything from. */
  readonly dist: Uri;
  closed(view: PlanView): void;
}

/** @param webview Restored by the editor after a reload; undefined: a tab is opened. */
export function createPlanView<Answer extends PlanAnswer, Move>(
  { session, log, dist, closed }: ViewWiring,
  kind: ViewKind,
  root: string,
  restored: WebviewPanel | undefined,
  contentIn: (webview: WebviewPanel, search: SearchPlan) => ViewContent<Answer, Move>,
): PlanView {
  const webview = restored ?? window.createWebviewPanel(kind.type, editorWords(kind.title), beside);
  const content = contentIn(webview, async ({ method, params, token, progress }) => {
    const client = await session.client();
    if (!client) throw new Error("the server has stopped");
    const workDoneToken = `${method} ${++searches}`;
    const listening = client.onProgress(WorkDoneProgress.type, workDoneToken, ({ kind, message }) => {
      if (kind === "report" && message !== undefined) progress(message);
    });
    try {
      const asked = { ...(await documentOf(client, root)), versions: versions(), ...params, workDoneToken };
      return await client.sendRequest(method, asked, token);
    } finally {
      listening.dispose();
    }
  });
  const steps = createStepsInText();
  /** Of the text; a change that is only tried does not replace it. */
  let answer: Answer | undefined;
  let number = 0;
  let searches = 0;
  /** The change that is tried. */
  let moved: Move | undefined;
  let asking: CancellationTokenSource | undefined;
  let outdated = true;
  let overdue: NodeJS.Timeout | undefined;

  const post = (message: object): void => void webview.webview.postMessage(message);
  const trouble = (message: string): void => post({ type: "say", about: "figures", message });
  const report = (message: string): void => post({ type: "say", about: "action", message });
  const send = (shown: Answer, move: Move | undefined): void => {
    webview.title = editorWords(`${kind.title}: ${shown.title}`);
    post(content.shown(shown, { number, move }));
  };
  const versions = (): ShownVersions =>
    Object.entries(answer?.versions ?? {}).map(([uri, version]) => ({ uri, version }));

  /** One request is on its way; a newer text or change cancels it and is asked for after it. */
  const follow = async (): Promise<void> => {
    outdated = true;
    asking?.cancel();
    if (asking || !webview.visible) return;
    while (outdated && webview.visible) {
      outdated = false;
      // A cancelled request is waited for too: the engine may be at work and hear nothing.
      overdue ??= setTimeout(() => trouble(kind.late), lateMs);
      asking = new CancellationTokenSource();
      await ask(asking, moved);
      asking.dispose();
      asking = undefined;
    }
    isInTime();
  };
  const isInTime = (): void => {
    clearTimeout(overdue);
    overdue = undefined;
  };
  const ask = async ({ token }: CancellationTokenSource, move: Move | undefined): Promise<void> => {
    try {
      const client = await session.client();
      if (!client) return trouble(kind.stopped);
      const params = { ...(await documentOf(client, root)), ...content.asked(versions(), move) };
      const found = await client.sendRequest<Answer | null>(kind.method, params, token);
      if (token.isCancellationRequested) return;
      if (!found) return trouble(`${Uri.parse(root).path.split("/").at(-1)} is no longer a plan.`);
      if (!move) {
        // A plan that is checked again, by another engine for example, has the same answer: a change of it is still of this text.
        if (JSON.stringify(found) !== JSON.stringify(answer)) number++;
        answer = found;
      }
      isInTime();
      send(found, move);
    } catch (error) {
      if (token.isCancellationRequested) return;
      if (wasOvertaken(error)) {
        // A change of an older text is dropped; the data of the newer one follow.
        moved = undefined;
        outdated = true;
        return;
      }
      isInTime();
      const why = reasonOf(error);
      log.error(`${kind.title} of ${root}: ${why}`);
      trouble(`${kind.notShown}: ${why}`);
    }
  };

  const letGo = async (of: number, move: Move): Promise<void> => {
    moved = undefined;
    asking?.cancel();
    const message = await written(of, move);
    if (message === "") return;
    if (answer) send(answer, undefined);
    report(message);
  };
  const written = async (of: number, move: Move): Promise<string> => {
    const notMade = content.notMade?.(move) ?? kind.notMade;
    if (!answer || of !== number) return `${notMade}: the text changed meanwhile.`;
    try {
      const client = await session.client();
      if (!client) return `${notMade}: the server has stopped.`;
      const params = { ...(await documentOf(client, root)), ...content.edited(versions(), move) };
      const found = await client.sendRequest<MoveAnswer>(kind.moveMethod, params);
      return found.state === "dropped" ? found.message : await steps.write(found.edits, notMade);
    } catch (error) {
      if (wasOvertaken(error)) return `${notMade}: the text changed meanwhile.`;
      log.error(`A change of ${root} from ${kind.title}: ${reasonOf(error)}`);
      return `${notMade}: ${reasonOf(error)}`;
    }
  };

  const again = async (command: "undo" | "redo"): Promise<void> => {
    const message = await steps[command](webview.viewColumn);
    webview.reveal(undefined, false);
    report(message);
  };

  const hear = (heard: Heard<Move>): void => {
    switch (heard.type) {
      case "ready":
        if (answer) send(answer, undefined);
        void follow();
        return;
      case "again":
        void follow();
        return;
      case "move":
        moved = heard.move;
        void follow();
        return;
      case "leaveAsIs":
        moved = undefined;
        void follow();
        return;
      case "letGo":
        void letGo(heard.number, heard.move);
        return;
      case "undo":
      case "redo":
        void again(heard.type).catch((error) => report(reasonOf(error)));
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
        log.error(`A picture of ${root} was not shown, because of ${heard.why} in it.`);
        return;
    }
  };

  const view: PlanView = {
    root,
    reveal: () => webview.reveal(undefined, true),
    dispose: () => webview.dispose(),
  };
  const listening = Disposable.from(
    new Disposable(() => content.dispose?.()),
    webview.webview.onDidReceiveMessage((said: unknown) => {
      const heard = content.heard(said);
      if (heard) hear(heard);
    }),
    webview.onDidChangeViewState(() => {
      if (webview.visible && outdated) void follow();
    }),
    session.onStatus(({ uri, state: is }) => {
      if (uri === undefined || is === "checking" || Uri.parse(uri).toString() !== root) return;
      // The text is newer than the change that is tried: its place may be gone.
      moved = undefined;
      void follow();
    }),
    session.onRunning((running) => {
      if (running) void follow();
      else trouble(kind.stopped);
    }),
  );
  webview.onDidDispose(() => {
    asking?.cancel();
    isInTime();
    listening.dispose();
    closed(view);
  });

  fillTab(webview, dist, kind.page, kind.html);
  return view;
}

/** An answer that takes longer is announced. */
const lateMs = 2_000;

/** The server reads only open files, and the file of a view may be closed. */
async function documentOf(client: LanguageClient, root: string) {
  const file = Uri.parse(root);
  if (file.scheme === "file") await workspace.openTextDocument(file).then(undefined, () => undefined);
  return { textDocument: { uri: client.code2ProtocolConverter.asUri(file) } };
}
