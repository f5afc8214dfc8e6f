import { commands, Disposable, EventEmitter, Uri, workspace } from "vscode";
import { editorWords } from "../server/language/plain-words.ts";

/** Pages of Markdown that exist in no file, shown beside the plan. A page with the same title takes the place of the older one. */
export interface MarkdownPages extends Disposable {
  show(title: string, markdown: string): Promise<void>;
}

/** Each kind of page has a scheme of its own. */
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
      // A path holds no "/" or "\" of a name; the name itself stands in the page. The tab shows it.
      const page = Uri.from({ scheme, path: `/${editorWords(title).replace(/[/\\]/g, "-")}.md` });
      texts.set(page.path, markdown);
      changed.fire(page);
      await commands.executeCommand("markdown.showPreviewToSide", page);
    },
    dispose: () => registered.dispose(),
  };
}
