import { commands, Disposable, EventEmitter, Uri, workspace } from "vscode";
import { editorWords } from "../server/language/plain-words.ts";

/** Markdown pages without a file, shown beside the plan. A page replaces an older one with the same title. */
export interface MarkdownPages extends Disposable {
  show(title: string, markdown: string): Promise<void>;
}

/** Each kind of page has its own scheme. */
export function createMarkdownPages(scheme: string): MarkdownPages {
  const changed = new EventEmitter<Uri>();
  const texts = new Map<string, string>();
  const registered = Disposable.from(
    changed,
    workspace.registerTextDocumentContentProvider(scheme, {
      onDidChange: changed.event,
      provideTextDocumentContent: (page) => texts.get(page.path) ?? "",
    }),
    workspace.onDidCloseTextDocument(({ uri }) => {
      if (uri.scheme === scheme) texts.delete(uri.path);
    }),
  );
  return {
    async show(title, markdown) {
      // A path cannot contain a "/" or "\" from a name; the page contains the exact name. The tab shows the path.
      const page = Uri.from({ scheme, path: `/${editorWords(title).replace(/[/\\]/g, "-")}.md` });
      texts.set(page.path, markdown);
      changed.fire(page);
      await commands.executeCommand("markdown.showPreviewToSide", page);
    },
    dispose: () => registered.dispose(),
  };
}
