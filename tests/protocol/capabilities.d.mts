import type { ClientCapabilities } from "vscode-languageserver/node";

export const pushing: ClientCapabilities;
export const pulling: ClientCapabilities;
