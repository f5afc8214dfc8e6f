import { TextDocument } from "vscode-languageserver-textdocument";
import { diskWorkspace } from "./evaluate/files/disk-workspace.ts";
import { changedRange } from "./evaluate/text/changed-range.ts";
import type { LastEdit, SourceText, Uri, Workspace } from "./evaluate/workspace.ts";
import { normalisedUri } from "./normalise-uri.ts";

/**
 * The disk below the open editors. Inside the server, each file has one spelling of its URI; answers to the editor use the
 * editor's own spelling.
 */
export interface EditorWorkspace extends Workspace {
  /** The server's URI of a file, from the editor's. */
  fromEditor(uri: string): Uri;
  /** The editor's URI of a file, and its version there; null when it is not open. */
  client(uri: Uri): { readonly uri: string; readonly version: number | null };
  /** The newest text of a file as a document, open or on disk. */
  document(uri: Uri): TextDocument | undefined;
  isOpen(uri: Uri): boolean;
  openFiles(): readonly Uri[];
  /** Takes in a document that was opened. The document is the editor's own and changes in place. */
  open(document: TextDocument): Uri;
  close(uri: string): Uri;
  /** Notes the range that the newest version of an open document changed. */
  edited(document: TextDocument): void;
  /** The last edit counts as written: it was saved, or left alone for a while. */
  settleEdit(): void;
  lastEdit(): LastEdit | undefined;
  setFolders(uris: readonly string[]): void;
}

interface Opened {
  readonly document: TextDocument;
  readonly opening: number;
  /** After the last edit. */
  text: string;
}

export type DiskBelow = (folders: readonly Uri[]) => Workspace;

export function createEditorWorkspace(diskBelow: DiskBelow = diskWorkspace): EditorWorkspace {
  const opened = new Map<Uri, Opened>();
  /** Held weakly: a file that was requested once is not kept for good. */
  const fromDisk = new Map<Uri, WeakRef<{ readonly version: unknown; readonly document: TextDocument }>>();
  let openings = 0;
  let lastEdit: LastEdit | undefined;
  let disk = diskBelow([]);

  const read = (uri: Uri): SourceText | undefined => {
    const open = opened.get(uri);
    if (!open) return disk.read(uri);
    // A file that is closed and opened again starts at version 1 with other text; the opening number distinguishes the two.
    const { document, opening } = open;
    return { uri, version: `${opening}/${document.version}`, text: document.getText() };
  };

  const withOpened = (onDisk: readonly Uri[]): Uri[] => {
    const files = new Set(onDisk.filter((uri) => !opened.has(uri)));
    for (const [uri, { document }] of opened) if (document.getText().includes("loomwright")) files.add(uri);
    return [...files];
  };

  return {
    read,
    folders: () => disk.folders(),
    realUri: (uri) => disk.realUri(uri),
    planFiles: () => withOpened(disk.planFiles()),
    *planFilesInSteps() {
      return withOpened(disk.planFilesInSteps ? yield* disk.planFilesInSteps() : disk.planFiles());
    },
    leftOut() {
      const { passedBy, wireNumbers } = disk.leftOut?.() ?? { passedBy: [], wireNumbers: [] };
      // An open file is judged even if a walk passes it by.
      return { passedBy: passedBy.filter(({ uri }) => !opened.has(uri)), wireNumbers };
    },
    unread: (uri) => (opened.has(uri) ? undefined : disk.unread?.(uri)),
    fromEditor: normalisedUri,
    client(uri) {
      const document = opened.get(uri)?.document;
      return { uri: document?.uri ?? uri, version: document?.version ?? null };
    },
    document(uri) {
      const open = opened.get(uri);
      if (open) return open.document;
      const text = read(uri);
      if (!text) {
        fromDisk.delete(uri);
        return undefined;
      }
      const known = fromDisk.get(uri)?.deref();
      if (known && known.version === text.version) return known.document;
      const document = TextDocument.create(uri, "typescript", 0, text.text);
      fromDisk.set(uri, new WeakRef({ version: text.version, document }));
      return document;
    },
    isOpen: (uri) => opened.has(uri),
    openFiles: () => [...opened.keys()],
    open(document) {
      const uri = normalisedUri(document.uri);
      openings++;
      opened.set(uri, { document, opening: openings, text: document.getText() });
      fromDisk.delete(uri);
      return uri;
    },
    close(editorUri) {
      const uri = normalisedUri(editorUri);
      opened.delete(uri);
      return uri;
    },
    edited(document) {
      const uri = normalisedUri(document.uri);
      const open = opened.get(uri);
      const text = document.getText();
      // Opening a document is no edit.
      if (!open || open.text === text) return;
      const { start, endAfter } = changedRange(open.text, text);
      open.text = text;
      lastEdit = { uri, start, end: endAfter };
    },
    settleEdit() {
      lastEdit = undefined;
    },
    lastEdit: () => lastEdit,
    setFolders(uris) {
      disk = diskBelow(uris.map((uri) => normalisedUri(uri)));
    },
  };
}
