import {
  CodeActionKind,
  type InitializeParams,
  type InitializeResult,
  TextDocumentSyncKind,
} from "vscode-languageserver";
import { version } from "../library/package.json";
import type { ClientAbilities } from "./language/code-actions.ts";
import { fixAllKind } from "./language/messages.ts";

/** The capabilities of the connected editor, read once from its handshake. */
export interface Editor extends ClientAbilities {
  readonly folders: readonly string[];
  /** It pulls findings itself, instead of having them pushed. */
  readonly pulls: boolean;
  /** It supports requests to fetch these again. */
  readonly refreshes: { readonly findings: boolean; readonly hints: boolean; readonly lenses: boolean };
  readonly registersWatching: boolean;
  readonly registersConfiguration: boolean;
  readonly answersConfiguration: boolean;
  readonly tellsFolders: boolean;
}

export function readEditor(
  params: Pick<InitializeParams, "capabilities" | "workspaceFolders" | "rootUri">,
): Editor {
  const { textDocument = {}, workspace = {} } = params.capabilities;
  const folders = params.workspaceFolders?.map(({ uri }) => uri) ?? (params.rootUri ? [params.rootUri] : []);
  const edits = workspace.workspaceEdit;
  return {
    folders,
    pulls: textDocument.diagnostic !== undefined,
    refreshes: {
      findings: workspace.diagnostics?.refreshSupport === true,
      hints: workspace.inlayHint?.refreshSupport === true,
      lenses: workspace.codeLens?.refreshSupport === true,
    },
    registersWatching: workspace.didChangeWatchedFiles?.dynamicRegistration === true,
    registersConfiguration: workspace.didChangeConfiguration?.dynamicRegistration === true,
    answersConfiguration: workspace.configuration === true,
    tellsFolders: workspace.workspaceFolders === true,
    versionedEdits: edits?.documentChanges === true,
    snippetEdits: edits?.snippetEditSupport === true,
    disabledActions: textDocument.codeAction?.disabledSupport === true,
  };
}

/** The answer to the handshake: the server's capabilities for this editor. */
export function initializeResult(params: InitializeParams): InitializeResult {
  return {
    serverInfo: { name: "loomwright", version },
    capabilities: {
      textDocumentSync: {
        openClose: true,
        change: TextDocumentSyncKind.Incremental,
        save: true,
        willSave: true,
      },
      hoverProvider: true,
      inlayHintProvider: true,
      codeLensProvider: {},
      documentSymbolProvider: true,
      completionProvider: { triggerCharacters: [":", " ", '"', "."] },
      codeActionProvider: {
        codeActionKinds: [CodeActionKind.QuickFix, CodeActionKind.RefactorRewrite, fixAllKind],
      },
      ...(readEditor(params).pulls ? { diagnosticProvider: pullOptions } : {}),
      workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
    },
  };
}

const pullOptions = { identifier: "loomwright", interFileDependencies: true, workspaceDiagnostics: false };
