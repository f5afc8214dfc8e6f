import { expect, test } from "vitest";
import type { Message, ResponseMessage } from "vscode-languageserver/node";
import { jsonOf, withResultAsText, withResultRead } from "./answer-text.ts";

const messages = {
  "an object": {
    jsonrpc: "2.0",
    id: 3,
    result: { items: [{ text: 'a "quoted" line\n\u2028 and {braces}' }] },
  },
  "a list": { jsonrpc: "2.0", id: "four", result: [] },
  "a number": { jsonrpc: "2.0", id: 5, result: 0 },
  nothing: { jsonrpc: "2.0", id: 6, result: null },
  "an error": { jsonrpc: "2.0", id: 7, error: { code: -32_802, message: "a newer one came" } },
  "a request": { jsonrpc: "2.0", id: 8, method: "workspace/configuration", params: { items: [] } },
  "a notification": { jsonrpc: "2.0", method: "window/logMessage", params: { message: "}" } },
} as Record<string, Message>;

test.each(Object.entries(messages))("%s is the same message after its way as text", (_, message) => {
  const sent = withResultAsText(message);
  expect(withResultRead(sent)).toEqual(message);
  expect(JSON.parse(jsonOf(sent))).toEqual(message);
});

test("only a response with a result becomes text", () => {
  const asText = Object.entries(messages).filter(([, message]) => "resultText" in withResultAsText(message));
  expect(asText.map(([name]) => name)).toEqual(["an object", "a list", "a number"]);
  expect((withResultAsText(messages["an object"]!) as ResponseMessage).result).toBeUndefined();
});
