import { type Birth, Call, open, sameBirth } from "./births.ts";
import { type BirthAt, plainCopy } from "./plain-copy.ts";
import { stringify } from "./primordials.ts";

/** A word of the DSL, so that calling it also leaves a record. It returns what the library's own word returns. */
export function recorded(word: string, make: (input: unknown) => unknown) {
  return (input: unknown): unknown => {
    const copy = plainCopy(input);
    let json = stringify(copy.value);
    if (json.length > maxJsonCharacters) json = '{"$strange":"more text than fits in one circuit"}';
    lines = "";
    const call = indexOfCall(open());
    const births = indicesOf(copy.births);
    // `lines` is read last: numbering calls and births wrote theirs.
    const line = `,["record","${word}",${json},${call},{${births}}]`;
    send(lines + line);
    if (typeof input !== "object" || input === null) return make(input);
    for (let stranger = copy.strangers; stranger !== undefined; stranger = stranger.next) {
      stranger.holder[stranger.key] = stranger.original;
    }
    const made = make(copy.value);
    sameBirth(made, input);
    return made;
  };
}

/** The number of the call that is open now, for the host to say where a plan stopped. */
export function indexOfOpenCall(): number {
  lines = "";
  const index = indexOfCall(open());
  send(lines);
  return index;
}

/** Hands lines to the host; true when the host wants no more, and the plan must stop. */
type Emit = (lines: string) => boolean;

export function setEmit(given: Emit | undefined) {
  if (given !== undefined) emit = given;
}

const maxJsonCharacters = 1_000_000;

let emit: Emit;
let lines = "";
let calls = 0;
let births = 0;

/** Calls and births that have a number but whose line is still to be written. Linked; no recursion, as chains may be long. */
let pending: Pending | undefined;

type Pending = { readonly next: Pending | undefined } & (
  | { readonly call: Call; readonly birth?: never }
  | { readonly birth: Birth; readonly call?: never }
);

function send(text: string) {
  // A plan could catch an exception; it cannot catch the interrupt that ends this loop.
  if (emit(text)) for (;;);
}

function indexOfCall(call: Call | undefined): number {
  if (call === undefined) return -1;
  const known = Call.index(call);
  if (known >= 0) return known;
  const index = number(call);
  writePending();
  return index;
}

function indicesOf(found: BirthAt | undefined): string {
  let text = "";
  for (let at = found; at !== undefined; at = at.next) {
    const index = numberOfBirth(at.birth);
    text += `${text === "" ? "" : ","}${stringify(at.path)}:${index}`;
  }
  writePending();
  return text;
}

function number(call: Call): number {
  const index = calls++;
  Call.number(call, index);
  pending = { call, next: pending };
  return index;
}

function numberOfCall(call: Call | undefined): number {
  if (call === undefined) return -1;
  const known = Call.index(call);
  return known >= 0 ? known : number(call);
}

function numberOfBirth(birth: Birth | undefined): number {
  if (birth === undefined) return -1;
  if (birth.index < 0) {
    birth.index = births++;
    pending = { birth, next: pending };
  }
  return birth.index;
}

/** Every line says its own number: should one be lost to an exception, the others still mean what they meant. */
function writePending() {
  while (pending !== undefined) {
    const { call, birth } = pending;
    pending = pending.next;
    if (call !== undefined) {
      const { site, within, seen } = Call.read(call);
      lines += `,["call",${Call.index(call)},${wholeNumber(site)},${numberOfCall(within)},[${numbersOf(seen)}]]`;
    } else {
      const { literal, call: within, seen } = birth;
      lines += `,["birth",${birth.index},${wholeNumber(literal)},${numberOfCall(within)},[${numbersOf(seen)}]]`;
    }
  }
}

function numbersOf(seen: readonly (Birth | undefined)[] | undefined): string {
  if (seen === undefined) return "";
  let text = "";
  for (let position = 0; position < seen.length; position++) {
    text += `${position === 0 ? "" : ","}${numberOfBirth(seen[position])}`;
  }
  return text;
}

/** A plan may have called a mark itself, with anything. */
function wholeNumber(given: unknown): number {
  return typeof given === "number" && given - given === 0 ? given : -1;
}
