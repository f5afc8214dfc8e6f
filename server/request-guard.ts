import { type CancellationToken, ErrorCodes, LSPErrorCodes, ResponseError } from "vscode-languageserver";
import { editorWords } from "./language/plain-words.ts";

/**
 * The entry point of every request. One with parameters that are missing or of a wrong type is refused, with the name of the
 * first. A cancelled request is answered with the protocol's own error, never with an empty list, which would read as "nothing
 * found". An exception is a broken assumption of ours: it is logged with the request and the shape of its parameters, and
 * affects only that request.
 */
export function createRequestGuard(log: (text: string) => void): RequestGuard {
  return async (method, params, token, answer) => {
    try {
      // Loaded with the first request: the handshake does not wait for it.
      const { wrongParams } = await import("./request-params.ts");
      const wrong = wrongParams(method, params);
      if (wrong !== undefined) throw new ResponseError(ErrorCodes.InvalidParams, editorWords(wrong));
      return await unlessCancelled(token, answer);
    } catch (error) {
      if (error instanceof ResponseError) throw error;
      const reason = error instanceof Error ? error.message : String(error);
      log(
        `${method} failed: ${error instanceof Error ? error.stack : reason}\nasked with ${JSON.stringify(shapeOf(params))}`,
      );
      throw new ResponseError(
        LSPErrorCodes.RequestFailed,
        editorWords(`Loomwright could not answer: ${reason}`),
      );
    }
  };
}

export type RequestGuard = <T>(
  method: string,
  params: unknown,
  token: CancellationToken,
  answer: () => Promise<T>,
) => Promise<T>;

/** The answer to a request about an outdated text. */
export function textChanged(): ResponseError<void> {
  return new ResponseError(LSPErrorCodes.ContentModified, "The text changed meanwhile.");
}

function unlessCancelled<T>(token: CancellationToken, answer: () => Promise<T>): Promise<T> {
  const cancelled = () => new ResponseError(LSPErrorCodes.RequestCancelled, "Cancelled.");
  if (token.isCancellationRequested) return Promise.reject(cancelled());
  return new Promise((resolve, reject) => {
    const answering = answer();
    const listening = token.onCancellationRequested(() => reject(cancelled()));
    answering.then(resolve, reject).finally(() => listening.dispose());
  });
}

/** The parameters without any text of the builder's: names of properties, kinds of values, numbers, and URIs. */
function shapeOf(value: unknown, depth = 0): unknown {
  if (typeof value === "string") return value.startsWith("file:") ? value : `text of ${value.length}`;
  if (typeof value !== "object" || value === null) return value;
  if (Array.isArray(value)) return `list of ${value.length}`;
  if (depth > 3) return "…";
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, shapeOf(inner, depth + 1)]));
}
