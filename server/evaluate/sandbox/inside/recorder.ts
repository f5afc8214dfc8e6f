import { type Birth, Call, open, sameBirth } from "./births.ts";
import { type BirthAt, plainCopy } from "./plain-copy.ts";
import { stringify } from "./primordials.ts";

/** A word of the DSL, so that calling it also leaves a record. It returns what the library's own word returns. */
export function recorded(word: string, make: (input: unknown) => unknown) {
  const head = `,["record","${word}",`;
  return (input: unknown): unknown => {
    const copy = plainCopy(input);
    let json = stringify(copy.value);
    if (json.length > maxJsonCharacters) json = '{"$strange":"more text than fits in one circuit"}';
    const call = indexOfCall(open());
    const births = indicesOf(copy.births);
    lines += `${head}${json},${call},{${births}}]`;
    made++;
    if (made <= sentAtOnce || made % sentTogether === 0) flush();
    if (typeof input !== "object" || input === null) return make(input);
    for (let stranger = copy.strangers; stranger !== undefined; stranger = stranger.next) {
      stranger.holder[stranger.key] = stranger.original;
    }
    const result = make(copy.value);
    sameBirth(result, input);
    return result;
  };
}

/** The number of the call that is open now, for the host to say where a plan stopped. */
export function indexOfOpenCall(): number {
  return indexOfCall(open());
}

/** Hands over what is still here. Called by the host when the plan has ended, in whatever way. */
export function flush() {
  const text = lines;
  lines = "";
  // A plan could catch an exception; it cannot catch the interrupt that ends this loop.
  if (emit(text, made)) for (;;);
}

/** Hands lines to the host, with the number of records made; true when the host wants no more and the plan must stop. */
type Emit = (lines: string, made: number) => boolean;

export function setEmit(given: Emit | undefined) {
  if (given !== undefined) emit = given;
}

/**
 * A call of the host costs as much as making the record. The first records of a plan go over one by one, later ones together;
 * so few that the last ones of a large plan, lost only if its worker must be killed, do not matter.
 */
const sentAtOnce = 64;
const sentTogether = 16;

const maxJsonCharacters = 1_000_000;

let emit: Emit;
let lines = "";
let made = 0;
let calls = 0;
let births = 0;

/**
 * Calls and births that have a number but whose line is still to be written. A chain rather than recursion, because calls
 * within calls may be many; a linked one, because a list that grows could be watched.
 */
let pending: Pending | undefined;

interface Pending {
  readonly call: Call | undefined;
  readonly birth: Birth | undefined;
  readonly next: Pending | undefined;
}

function indexOfCall(call: Call | undefined): number {
  const index = numberOfCall(call);
  if (pending !== undefined) writePending();
  return index;
}

function indicesOf(found: BirthAt | undefined): string {
  let text = "";
  for (let at = found; at !== undefined; at = at.next) {
    const pair = `${at.path === "" ? '""' : stringify(at.path)}:${numberOfBirth(at.birth)}`;
    text = text === "" ? pair : `${text},${pair}`;
  }
  if (pending !== undefined) writePending();
  return text;
}

function numberOfCall(call: Call | undefined): number {
  if (call === undefined) return -1;
  const known = Call.index(call);
  if (known >= 0) return known;
  Call.number(call, calls);
  pending = { call, birth: undefined, next: pending };
  return calls++;
}

function numberOfBirth(birth: Birth | undefined): number {
  if (birth === undefined) return -1;
  if (birth.index < 0) {
    birth.index = births++;
    pending = { call: undefined, birth, next: pending };
  }
  return birth.index;
}

/** Every line says its own number: should one be lost to an exception, the others still mean what they meant. */
function writePending() {
  while (pending !== undefined) {
    const call: Call | undefined = pending.call;
    const birth: Birth | undefined = pending.birth;
    pending = pending.next;
    if (call !== undefined) {
      const within = numberOfCall(Call.within(call));
      lines += `,["call",${Call.index(call)},${wholeNumber(Call.site(call))},${within}${seenOf(Call.seen(call))}]`;
    } else if (birth !== undefined) {
      const within = numberOfCall(birth.call);
      lines += `,["birth",${birth.index},${wholeNumber(birth.literal)},${within}${seenOf(birth.seen)}]`;
    }
  }
}

/** Left out where nothing was seen, as nearly always. */
function seenOf(seen: readonly (Birth | undefined)[] | undefined): string {
  if (seen === undefined) return "";
  let text = ",[";
  for (let position = 0; position < seen.length; position++) {
    text += `${position === 0 ? "" : ","}${numberOfBirth(seen[position])}`;
  }
  return `${text}]`;
}

/** A plan may have called a mark itself, with anything. */
function wholeNumber(given: unknown): number {
  return typeof given === "number" && given - given === 0 ? given : -1;
}
