// The capabilities of the editors that the protocol tests and the soak simulate. Plain JavaScript, because the soak runs
// unbundled.

/** An editor that receives pushed findings and can do everything else. */
export const pushing = {
  workspace: {
    configuration: true,
    workspaceFolders: true,
    didChangeWatchedFiles: { dynamicRegistration: true },
    didChangeConfiguration: { dynamicRegistration: true },
    workspaceEdit: { documentChanges: true },
    codeLens: { refreshSupport: true },
    inlayHint: { refreshSupport: true },
    diagnostics: { refreshSupport: true },
  },
  textDocument: { hover: { contentFormat: ["markdown"] } },
};

/** The same editor, pulling findings. */
export const pulling = {
  ...pushing,
  textDocument: { ...pushing.textDocument, diagnostic: { relatedDocumentSupport: true } },
};
