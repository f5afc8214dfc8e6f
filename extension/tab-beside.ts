import { randomBytes } from "node:crypto";
import { Uri, ViewColumn, type WebviewPanel } from "vscode";
import type { PageFrame } from "./page-frame.ts";

/** Where a tab with a page of ours opens: beside the text, which keeps the focus. */
export const beside = { viewColumn: ViewColumn.Beside, preserveFocus: true } as const;

/** Puts a page into its tab. It may load files of `dist` only: the script and the style sheet of its name. */
export function fillTab(
  { webview }: WebviewPanel,
  dist: Uri,
  name: string,
  page: (frame: PageFrame) => string,
): void {
  webview.options = { enableScripts: true, localResourceRoots: [dist] };
  const address = (file: string) => webview.asWebviewUri(Uri.joinPath(dist, file)).toString();
  webview.html = page({
    nonce: randomBytes(16).toString("hex"),
    source: webview.cspSource,
    script: address(`${name}.js`),
    style: address(`${name}.css`),
  });
}

/** Another request for the same plan replaced it, or the text changed meanwhile: codes of the protocol. */
export function wasOvertaken(error: unknown): boolean {
  const code = (error as { readonly code?: unknown } | null)?.code;
  return code === -32801 || code === -32802;
}
