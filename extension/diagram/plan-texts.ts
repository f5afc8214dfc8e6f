import {
  type Disposable,
  Position,
  Range,
  Selection,
  type TextDocument,
  type TextEditor,
  TextEditorRevealType,
  Uri,
  ViewColumn,
  window,
  workspace,
} from "vscode";
import type { Diagram } from "../../server/language/messages.ts";
import { elementsAt, type LocatedElement } from "./elements-at.ts";

/** The texts beside a view: from an element to its line, and from the cursor to its elements. */
export interface PlanTexts extends Disposable {
  /** The elements that are shown from now on. */
  show(shown: ShownElements): void;
  /** Puts the cursor where an element is written; with `take`, the text also gets the focus. An unknown id is ignored. */
  goTo(element: string, take: boolean, panel: ViewColumn | undefined): void;
  /** Gives the focus to the text that had it last, else to the given file. */
  takeFocus(root: Uri, panel: ViewColumn | undefined): void;
}

interface ShownElements {
  /** The editor's versions of the texts that they were computed from, by URI as the editor writes it. */
  readonly versions: Diagram["versions"];
  readonly elements: readonly LocatedElement[];
}

/** @param tell called with the ids of the elements under the cursor, when these change or other elements are shown */
export function createPlanTexts(tell: (elements: readonly string[]) => void): PlanTexts {
  let shown: ShownElements | undefined;
  let elements = new Map<string, LocatedElement>();
  /** The editor of a file of the plan that had the cursor last. */
  let last: TextEditor | undefined;
  let told: string | undefined;
  /** Requested while the text was newer than the elements and their locations. */
  let waiting: (() => void) | undefined;

  let going: Promise<void> = Promise.resolve();

  const knows = ({ uri, version }: TextDocument): boolean => shown?.versions[uri.toString()] === version;
  const tellCursor = (): void => {
    if (!shown || !last || !knows(last.document)) return;
    const ids = elementsAt(shown.elements, last.document.uri.toString(), last.selection.active);
    const now = JSON.stringify(ids);
    if (now === told) return;
    told = now;
    tell(ids);
  };
  const look = (editor: TextEditor | undefined): void => {
    if (!editor || !shown || !(editor.document.uri.toString() in shown.versions)) return;
    last = editor;
    tellCursor();
  };

  const goTo = async (
    { uri, range }: NonNullable<LocatedElement["location"]>,
    take: boolean,
    panel?: ViewColumn,
  ) => {
    const document = await workspace.openTextDocument(Uri.parse(uri));
    const start = new Position(range.start.line, range.start.character);
    const editor = await window.showTextDocument(document, {
      viewColumn: columnFor(document.uri, last, panel),
      preserveFocus: !take,
      preview: false,
    });
    // Only now: a reopened tab restores its last cursor.
    editor.selection = new Selection(start, start);
    editor.revealRange(new Range(start, start), TextEditorRevealType.InCenterIfOutsideViewport);
  };

  const listening = window.onDidChangeTextEditorSelection(({ textEditor }) => look(textEditor));
  return {
    show(next) {
      shown = next;
      elements = new Map(next.elements.map((element) => [element.id, element]));
      told = undefined;
      if (last && window.visibleTextEditors.includes(last)) tellCursor();
      else look(window.activeTextEditor);
      const go = waiting;
      waiting = undefined;
      go?.();
    },
    goTo(id, take, panel) {
      const location = elements.get(id)?.location;
      if (!location) return;
      const open = workspace.textDocuments.find(({ uri }) => uri.toString() === location.uri);
      if (open && !knows(open) && !waiting) waiting = () => this.goTo(id, take, panel);
      // In sequence: a double-click sends two.
      else going = going.then(() => goTo(location, take, panel)).catch(() => undefined);
    },
    takeFocus(root, panel) {
      const uri = last?.document.uri ?? root;
      void workspace
        .openTextDocument(uri)
        .then((document) =>
          window.showTextDocument(document, { viewColumn: columnFor(uri, last, panel), preview: false }),
        );
    },
    dispose: () => listening.dispose(),
  };
}

/** The column that already shows the file, else one beside the panel and not over it. */
export function columnFor(uri: Uri, last: TextEditor | undefined, panel: ViewColumn | undefined): ViewColumn {
  const seen = window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri.toString());
  const column = seen?.viewColumn ?? last?.viewColumn ?? ViewColumn.One;
  return column === panel ? ViewColumn.Beside : column;
}
