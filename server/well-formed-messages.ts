import type { MessageStrategy } from "vscode-languageserver";

/**
 * Keeps malformed messages from the library, which would fail on them before our own code is called. If the parameters of a
 * request are no object, they become an empty one, and the request guard names the missing parameter. A malformed notification
 * is left out and logged. A change that cannot be applied closes its document: the editor's text is unknown from then on, and
 * is not judged.
 */
export function wellFormedMessages(log: (text: string) => void): MessageStrategy {
  return {
    handleMessage(message, next) {
      const { method, params, id } = message as { method?: unknown; params?: unknown; id?: unknown };
      if (typeof method !== "string") return next(message);
      if (id !== undefined) return next(withParams(message, wellFormedRequest(method, params)));
      const wrong = malformed[method]?.(params as never);
      if (wrong === undefined) return next(message);
      const uri = method === didChange ? at(params, "textDocument", "uri") : undefined;
      log(
        `${method} was not understood: ${wrong}.${uri ? ` ${uri} counts as closed until it is opened again.` : ""}`,
      );
      if (typeof uri === "string") {
        next({
          ...message,
          method: "textDocument/didClose",
          params: { textDocument: { uri } },
        } as typeof message);
      }
    },
  };
}

function wellFormedRequest(method: string, params: unknown): unknown {
  // The library answers a handshake without parameters; most other requests whose parameters are no object get no answer.
  if (method === "initialize") return isObject(params) && isObject(params.capabilities) ? params : undefined;
  return params === undefined || method === "shutdown" || isObject(params) ? params : {};
}

function withParams<Message>(message: Message, params: unknown): Message {
  return { ...message, params };
}

const didChange = "textDocument/didChange";

/** By method: the fault of the parameters, if any. */
const malformed: Readonly<Record<string, (params: unknown) => string | undefined>> = {
  "textDocument/didOpen": (params) =>
    wrongUri(params) ??
    wrongVersion(params) ??
    (typeof at(params, "textDocument", "text") === "string" ? undefined : "textDocument.text must be a text"),
  [didChange]: (params) =>
    wrongUri(params) ?? wrongVersion(params) ?? wrongChanges(at(params, "contentChanges")),
  "textDocument/didClose": wrongUri,
  "textDocument/didSave": wrongUri,
  "textDocument/willSave": wrongUri,
  "workspace/didChangeWatchedFiles": (params) => wrongUris("changes", at(params, "changes")),
  "workspace/didChangeWorkspaceFolders": (params) =>
    wrongUris("event.added", at(params, "event", "added")) ??
    wrongUris("event.removed", at(params, "event", "removed")),
  "workspace/didChangeConfiguration": (params) => (isObject(params) ? undefined : "settings are missing"),
  "$/cancelRequest": (params) =>
    ["string", "number"].includes(typeof at(params, "id")) ? undefined : "id must be a number or a text",
  "$/setTrace": (params) => (typeof at(params, "value") === "string" ? undefined : "value must be a text"),
  "$/progress": (params) => (isObject(params) ? undefined : "a token is missing"),
};

function wrongUri(params: unknown): string | undefined {
  return typeof at(params, "textDocument", "uri") === "string" ? undefined : "textDocument.uri must be a URI";
}

function wrongVersion(params: unknown): string | undefined {
  return Number.isSafeInteger(at(params, "textDocument", "version"))
    ? undefined
    : "textDocument.version must be a whole number";
}

function wrongUris(name: string, list: unknown): string | undefined {
  return Array.isArray(list) && list.every((one) => typeof at(one, "uri") === "string")
    ? undefined
    : `${name} must be a list of objects with a URI`;
}

function wrongChanges(changes: unknown): string | undefined {
  if (!Array.isArray(changes)) return "contentChanges must be a list";
  const isSound = (change: unknown) =>
    typeof at(change, "text") === "string" &&
    (at(change, "range") === undefined ||
      ["start", "end"].every((end) => isPosition(at(change, "range", end))));
  return changes.every(isSound)
    ? undefined
    : "a change must have a text, and a range of two positions or none";
}

/** A position beyond the end of a line or of the text is legal, and means that end. */
function isPosition(value: unknown): boolean {
  return [at(value, "line"), at(value, "character")].every(
    (number) => Number.isSafeInteger(number) && (number as number) >= 0,
  );
}

function at(value: unknown, ...keys: readonly string[]): unknown {
  return keys.reduce<unknown>((inner, key) => (isObject(inner) ? inner[key] : undefined), value);
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
