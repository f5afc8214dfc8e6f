import { describe, expect, test } from "vitest";
import { CancellationTokenSource, ErrorCodes, LSPErrorCodes, ResponseError } from "vscode-languageserver";
import { createRequestGuard } from "./request-guard.ts";

describe("request guard", () => {
  const never = new Promise<string[]>(() => undefined);

  test("a cancelled request is answered with the protocol's error, not with an empty list", async () => {
    const source = new CancellationTokenSource();
    const answer = createRequestGuard(() => undefined)("hover", {}, source.token, () => never);
    source.cancel();
    await expect(answer).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
  });

  test("one that was cancelled before it began, too, and it is not begun", async () => {
    const source = new CancellationTokenSource();
    source.cancel();
    let begun = false;
    const answer = createRequestGuard(() => undefined)("hover", {}, source.token, () => {
      begun = true;
      return never;
    });
    await expect(answer).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
    expect(begun).toBe(false);
  });

  test("an exception costs one request and is logged with what was asked, without the builder's text", async () => {
    const log: string[] = [];
    const guard = createRequestGuard((text) => log.push(text));
    const { token } = new CancellationTokenSource();
    const params = {
      textDocument: { uri: "file:///van.ts", text: "my secret plan" },
      position: { line: 3, character: 0 },
    };
    const answer = guard("textDocument/hover", params, token, () => {
      throw new TypeError("x is undefined");
    });
    await expect(answer).rejects.toMatchObject({ code: LSPErrorCodes.RequestFailed });
    await expect(answer).rejects.toThrow("x is undefined");
    expect(log.join()).toContain("textDocument/hover");
    expect(log.join()).toContain("file:///van.ts");
    expect(log.join()).not.toContain("secret");
    await expect(guard("again", {}, token, async () => 1)).resolves.toBe(1);
  });

  test("a request without what it needs is refused with the name of that, is not begun, and is no failure to log", async () => {
    const log: string[] = [];
    const { token } = new CancellationTokenSource();
    let begun = false;
    const answer = createRequestGuard((text) => log.push(text))("textDocument/hover", {}, token, async () => {
      begun = true;
    });
    await expect(answer).rejects.toMatchObject({ code: ErrorCodes.InvalidParams });
    await expect(answer).rejects.toThrow("textDocument is missing");
    expect(begun).toBe(false);
    expect(log).toEqual([]);
  });

  test("errors of the protocol pass unchanged", async () => {
    const { token } = new CancellationTokenSource();
    const thrown = new ResponseError(LSPErrorCodes.ContentModified, "changed");
    const answer = createRequestGuard(() => undefined)("hover", {}, token, () => Promise.reject(thrown));
    await expect(answer).rejects.toBe(thrown);
  });
});
