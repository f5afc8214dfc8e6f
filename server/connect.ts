import {
  CodeLensRefreshRequest,
  type Connection,
  DiagnosticRefreshRequest,
  DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification,
  type InitializeResult,
  InlayHintRefreshRequest,
  TextDocumentSaveReason,
  TextDocuments,
} from "vscode-languageserver";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { Services } from "./answer-wiring.ts";
import { initializeResult, readEditor } from "./client-capabilities.ts";
import { createDiagnosticsPublisher, type DiagnosticsPublisher } from "./diagnostics-publisher.ts";
import { createEditorWorkspace } from "./editor-workspace.ts";
import {
  atRestMethod,
  type Duty,
  dutyMethod,
  type Elsewhere,
  elsewhereMethod,
  pingMethod,
  type Quick,
  quickMethod,
  readyMethod,
  workingOnMethod,
} from "./engine-messages.ts";
import type { createChecker } from "./evaluate/checker.ts";
import type { Sandbox } from "./evaluate/sandbox.ts";
import type { Uri } from "./evaluate/workspace.ts";
import { answerRequests } from "./handle-requests.ts";
import { type StatusParams, statusMethod } from "./language/messages.ts";
import { editorWords } from "./language/plain-words.ts";
import { defaultSettings, limitsOf, readSettings, type Settings } from "./language/settings.ts";
import { createOpenPlans } from "./open-plans.ts";
import { statusOf } from "./plan-status.ts";
import { createRefresher } from "./refresher.ts";
import { createWorkReport } from "./work-report.ts";

export interface Engine {
  /** Counts the engines of a server. */
  readonly number: number;
  /** Loads the module with the checker. TypeScript is inside and is slow to load. */
  loadChecker(): Promise<CheckerModule>;
  /** Preparation while the engine has no duty yet. */
  prepare(checker: CheckerModule, isOnDuty: () => boolean): Promise<void>;
  /** For the first checker; already running if the engine had time to prepare. */
  readonly sandbox: Sandbox;
}

interface CheckerModule {
  readonly createChecker: typeof createChecker;
}

/** Connects one editor to the checker. Contains no logic: each part below ties messages to their handlers. */
export function connect(connection: Connection, { number, loadChecker, prepare, sandbox }: Engine): void {
  const documents = new TextDocuments(TextDocument);
  const workspace = createEditorWorkspace();
  let editor = readEditor({ capabilities: {}, rootUri: null });
  let settings = defaultSettings;
  let duty: Duty = { role: "foreground", slow: [], givenUp: [] };
  const loaded = loadChecker();
  let isOnDuty = false;
  loaded
    .then((checker) => {
      connection.sendNotification(readyMethod);
      return prepare(checker, () => isOnDuty);
    })
    // Failures are reported after the handshake.
    .catch(() => undefined);
  // The engine's thread has already answered.
  connection.onNotification(pingMethod, () => undefined);
  connection.onNotification(dutyMethod, (next: Duty) => {
    duty = next;
    isOnDuty = true;
    parts?.checker.expectSlow(next.slow);
    parts?.plans.assigned();
  });
  const work = createWorkReport({
    workspace,
    duty: () => duty,
    send: (working) => void connection.sendNotification(workingOnMethod, working),
  });

  // After the findings of the same turn, which a person waits for.
  const status = (params: StatusParams) =>
    void setImmediate(() => connection.sendNotification(statusMethod, params));

  const refresher = createRefresher({
    versionOf: (file) => workspace.client(file).version,
    send(kind) {
      if (!editor.refreshes[kind]) return;
      // An editor that cannot refresh now is asked again at the next change.
      connection.sendRequest(refreshRequests[kind]).catch(() => undefined);
    },
  });

  let tellConfigured = () => {};
  const configured = new Promise<void>((resolve) => {
    tellConfigured = resolve;
  });

  /** The answering parts: while they load, and once they are loaded. */
  let starting: Promise<Services> | undefined;
  let parts: Services | undefined;
  const running = () => {
    starting ??= start();
    return starting;
  };

  const checkerOptions = (current: Settings) => ({
    limits: limitsOf(current),
    workGoesOn: (root: Uri) => work.goesOn(root),
  });

  const start = async (): Promise<Services> => {
    const [{ createChecker }] = await Promise.all([loaded, configured]);
    const checker = createChecker(workspace, { ...checkerOptions(settings), sandbox });
    checker.expectSlow(duty.slow);
    const begunMs = new Map<Uri, number>();
    let sentElsewhere = "";
    const plans = createOpenPlans(checker, {
      workspace,
      duty: () => duty,
      firstSerial: number * serialsPerEngine,
      workOn(root, files) {
        begunMs.set(root, performance.now());
        work.begins(root, files);
      },
      log: (text) => connection.console.error(text),
      started: (root) => status({ uri: workspace.client(root).uri, state: "checking", message: "checking" }),
      arrived(plan) {
        delivery.arrived(plan);
        const files = plan.outcome && plan.outcome.state !== "failed" ? plan.outcome.snapshot : undefined;
        refresher.arrived((file) => files?.has(file) ?? true);
        status(statusOf(plan, workspace));
        const tookMs = performance.now() - (begunMs.get(plan.root) ?? 0);
        if (duty.role === "background" && tookMs < quickMs && duty.slow.includes(plan.root))
          connection.sendNotification(quickMethod, { root: plan.root } satisfies Quick);
      },
      elsewhere(files) {
        const uris = files.map((file) => workspace.client(file).uri);
        if (uris.join("\n") === sentElsewhere) return;
        sentElsewhere = uris.join("\n");
        connection.sendNotification(elsewhereMethod, { uris } satisfies Elsewhere);
      },
      // An answer that waited for it is sent first; a change that has arrived meanwhile ends the rest.
      rested: () =>
        void setImmediate(() => {
          if (plans.atRest()) connection.sendNotification(atRestMethod);
        }),
      gone(root) {
        begunMs.delete(root);
        work.forget(root);
        delivery.gone(root);
        status({ uri: workspace.client(root).uri, state: "gone", message: "no longer a plan" });
      },
    });
    const delivery: DiagnosticsPublisher = createDiagnosticsPublisher({
      workspace,
      plans,
      editorPulls: editor.pulls,
      push: (uri, of, diagnostics) =>
        void connection.sendDiagnostics({ uri, diagnostics, ...(of === undefined ? {} : { version: of }) }),
      askToPull: () => refresher.ask("findings"),
    });
    parts = { checker, plans, delivery, work };
    // Files opened while this was loading; a request that waits for it then finds its plans known.
    plans.touched(workspace.openFiles());
    return parts;
  };

  connection.onInitialize((params): InitializeResult => {
    editor = readEditor(params);
    settings = readSettings(params.initializationOptions);
    workspace.setFolders(editor.folders);
    return initializeResult(params);
  });

  connection.onInitialized(async () => {
    // Must precede any reading, to miss no change while the checker loads.
    registerForChanges();
    try {
      readConfiguration().then(tellConfigured, tellConfigured);
      await running();
      status({ state: "idle", message: "ready" });
    } catch (error) {
      const message = `Loomwright could not start: ${error instanceof Error ? error.message : String(error)}`;
      status({ state: "failed", message });
      connection.window.showErrorMessage(editorWords(message));
    }
  });

  const registerForChanges = () => {
    const refused = (error: unknown) =>
      connection.console.warn(`The editor does not report changes: ${String(error)}`);
    if (editor.registersWatching) {
      const watchers = [{ globPattern: "**/*.{ts,mts,cts,tsx,js,mjs,cjs,jsx}" }];
      connection.client.register(DidChangeWatchedFilesNotification.type, { watchers }).catch(refused);
    }
    if (editor.registersConfiguration) {
      const section = "loomwright";
      connection.client.register(DidChangeConfigurationNotification.type, { section }).catch(refused);
    }
    if (editor.tellsFolders) {
      connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
        const gone = new Set(removed.map(({ uri }) => uri));
        editor = {
          ...editor,
          folders: [...editor.folders.filter((uri) => !gone.has(uri)), ...added.map(({ uri }) => uri)],
        };
        workspace.setFolders(editor.folders);
        parts?.plans.touched(workspace.openFiles());
      });
    }
  };

  documents.onDidOpen(({ document }) => {
    const file = workspace.open(document);
    if (!editor.registersWatching) parts?.checker.changedOnDisk([file]);
    openedOrClosed(file);
  });
  /** Addresses of the documents that the editor saves by itself after a pause: their builder may be in the middle of a word. */
  const savedByEditor = new Set<string>();
  documents.onWillSave(({ document, reason }) => {
    if (reason === TextDocumentSaveReason.AfterDelay) savedByEditor.add(document.uri);
    else savedByEditor.delete(document.uri);
  });
  documents.onDidSave(({ document }) => {
    if (!savedByEditor.delete(document.uri)) settleEdit();
    // An editor that watches files has already reported this.
    if (editor.registersWatching) return;
    parts?.checker.changedOnDisk([workspace.fromEditor(document.uri)]);
    parts?.plans.touched(workspace.openFiles());
  });
  documents.onDidChangeContent(({ document }) => {
    workspace.edited(document);
    settlesAfterPause.refresh();
    parts?.plans.touched([workspace.fromEditor(document.uri)]);
  });
  /** Half-typed text becomes the error that it is. */
  const settleEdit = () => {
    if (!workspace.lastEdit()) return;
    workspace.settleEdit();
    parts?.plans.touched([]);
  };
  const settlesAfterPause = setTimeout(settleEdit, pauseMs).unref();
  documents.onDidClose(({ document }) => {
    const file = workspace.close(document.uri);
    refresher.closed(file);
    openedOrClosed(file);
  });
  const openedOrClosed = (file: Uri) => {
    parts?.delivery.openedOrClosed(file);
    parts?.plans.touched([file]);
  };

  connection.onDidChangeWatchedFiles(({ changes }) => {
    // An install touches thousands of files that belong to no plan, and each batch would trigger another walk of all folders.
    const files = changes.map(({ uri }) => workspace.fromEditor(uri)).filter((file) => !foreign.test(file));
    if (files.length === 0) return;
    parts?.checker.changedOnDisk(files);
    parts?.plans.touched(files);
  });

  connection.onDidChangeConfiguration(async ({ settings: sent }) => {
    await readConfiguration((sent as { loomwright?: unknown } | null)?.loomwright);
  });

  const readConfiguration = async (sent?: unknown) => {
    if (editor.answersConfiguration) {
      const answer: unknown = await connection.workspace.getConfiguration("loomwright");
      // An editor without such a section returns no object; its settings from the handshake then remain.
      if (typeof answer === "object" && answer !== null) await adopt(readSettings(answer));
    } else if (sent !== undefined) {
      await adopt(readSettings(sent));
    }
  };

  const adopt = async (next: Settings) => {
    const before = settings;
    settings = next;
    if (before.inlayHints !== next.inlayHints) refresher.ask("hints");
    if (before.timeLimitMs === next.timeLimitMs && before.memoryLimitMiB === next.memoryLimitMiB) return;
    if (!parts) return;
    const { createChecker } = await loaded;
    const old = parts.checker;
    parts.checker = createChecker(workspace, checkerOptions(next));
    parts.checker.expectSlow(duty.slow);
    parts.plans.use(parts.checker);
    await old.dispose();
  };

  connection.onShutdown(async () => {
    await parts?.checker.dispose();
  });

  answerRequests(connection, {
    workspace,
    refresher,
    running,
    settings: () => settings,
    editor: () => editor,
  });
  documents.listen(connection);
}

/** A person who has not typed for this long is no longer in the middle of a name. */
const pauseMs = 2_000;

/** More than one engine can ever use up. */
const serialsPerEngine = 1_000_000_000;

/** A plan that is checked within this time does not delay any answer. */
const quickMs = 150;

const refreshRequests = {
  findings: DiagnosticRefreshRequest.type,
  hints: InlayHintRefreshRequest.type,
  lenses: CodeLensRefreshRequest.type,
};

const foreign = /\/(?:node_modules|\.git)\//;
