import { commands, type Diagnostic, type Disposable, Uri } from "vscode";
import type { Middleware } from "vscode-languageclient/node";
import { registerCommand } from "./command.ts";

const openRulePage = "loomwright.openRulePage";

/**
 * A finding links to the page of its rule. The server can only name the page's file, which the editor would open as plain text,
 * so the link is turned into a command that shows it as a page. The pages travel with the extension: no network is needed.
 */
export const linkToRulePages: Middleware = {
  handleDiagnostics(uri, diagnostics, next) {
    diagnostics.forEach(linkToPage);
    next(uri, diagnostics);
  },
  async provideDiagnostics(document, previousResultId, token, next) {
    const report = await next(document, previousResultId, token);
    if (report && "items" in report) report.items.forEach(linkToPage);
    return report;
  },
  provideWorkspaceDiagnostics(resultIds, token, reporter, next) {
    return next(resultIds, token, (report) => {
      for (const document of report?.items ?? []) {
        if ("items" in document) document.items.forEach(linkToPage);
      }
      reporter(report);
    });
  },
};

/** The command behind those links. Its argument is the address of a page. */
export function registerRulePages(): Disposable {
  return registerCommand(openRulePage, (page: unknown) =>
    commands.executeCommand("markdown.showPreview", Uri.parse(String(page), true)),
  );
}

function linkToPage({ code }: Diagnostic): void {
  if (typeof code !== "object" || code.target.scheme !== "file" || !code.target.path.endsWith(".md")) return;
  const page = encodeURIComponent(JSON.stringify([code.target.toString()]));
  code.target = Uri.parse(`command:${openRulePage}?${page}`, true);
}
