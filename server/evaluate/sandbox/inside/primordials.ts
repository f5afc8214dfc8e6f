/** The language's own functions, taken before a plan can change them. */
export const { defineProperty, freeze, getOwnPropertyDescriptor, getPrototypeOf, values: valuesOf } = Object;
export const { apply, construct, ownKeys } = Reflect;
export const { isArray } = Array;
export const { stringify } = JSON;
export const objectPrototype = Object.prototype;
const { slice } = String.prototype;

/** The first characters of a text. */
export function firstOf(text: string, characters: number): string {
  return text.length <= characters ? text : between(text, 0, characters);
}

export function between(text: string, start: number, end: number): string {
  return apply(slice, text, [start, end]);
}
