import { firstOf, getOwnPropertyDescriptor, getPrototypeOf, stringify } from "./primordials.ts";

/**
 * The thrown value, as JSON of {@link Thrown}. Runs no getters: reads only texts that are plain properties of the error or its
 * class.
 */
export function describeThrown(thrown: unknown): string {
  if (typeof thrown !== "object" || thrown === null) {
    return json(
      typeof thrown === "string" ? thrown : typeof thrown === "symbol" ? "a symbol" : `${thrown}`,
      "",
    );
  }
  const name = textOf(thrown, "name");
  const message = textOf(thrown, "message");
  if (name === "" && message === "") return json("an object that is not an error", "");
  return json(name === "" ? message : message === "" ? name : `${name}: ${message}`, textOf(thrown, "stack"));
}

/** JSON of: a message such as "TypeError: x is not a function", and the engine's stack as text ("" if there is none). */
export type Thrown = [message: string, stack: string];

function json(message: string, stack: string): string {
  return `[${stringify(firstOf(message, 2_000))},${stringify(firstOf(stack, 20_000))}]`;
}

function textOf(thrown: object, property: string): string {
  let holder: object | null = thrown;
  for (let steps = 0; holder !== null && steps < 10; steps++) {
    const descriptor = getOwnPropertyDescriptor(holder, property);
    if (descriptor !== undefined) return typeof descriptor.value === "string" ? descriptor.value : "";
    holder = getPrototypeOf(holder);
  }
  return "";
}
