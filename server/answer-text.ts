import type { Message, ResponseMessage } from "vscode-languageserver/node";

/**
 * A response with its result already as JSON text. An engine sends its answers to the front in this shape: copying a large
 * object between threads costs more than writing it as JSON, and the front passes most results on unread.
 */
export interface AnswerText extends Omit<ResponseMessage, "result" | "error"> {
  readonly resultText: string;
}

/** Turns responses with a result into {@link AnswerText}; leaves any other message as it is. */
export function withResultAsText(message: Message): Message {
  const { result, error, ...head } = message as ResponseMessage;
  if (result === undefined || result === null || error || "method" in message) return message;
  return { ...head, resultText: JSON.stringify(result) } as AnswerText;
}

/** The protocol message that an answer represents. */
export function withResultRead(message: Message): Message {
  if (!isAnswerText(message)) return message;
  const { resultText, ...head } = message;
  return { ...head, result: JSON.parse(resultText) } as ResponseMessage;
}

/** The message as JSON; the text of a result is inserted as it is. */
export function jsonOf(message: Message): string {
  if (!isAnswerText(message)) return JSON.stringify(message);
  const { resultText, ...head } = message;
  return `${JSON.stringify(head).slice(0, -1)},"result":${resultText}}`;
}

function isAnswerText(message: Message): message is AnswerText {
  return "resultText" in message;
}
