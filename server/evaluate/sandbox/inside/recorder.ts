import { type Allocation, Call, open, sameAllocation } from "./allocations.ts";
import { type AllocationAt, plainCopy } from "./plain-copy.ts";
import { stringify } from "./primordials.ts";
import { jsonOf, referenceTo, rememberMade } from "./references.ts";

/**
 * A word of the DSL, so that calling it also leaves a record. It returns what the library's own word returns, numbered by its
 * record. `place` is where the host counts the word.
 * What a record says in numbers is written as numbers, because making text of them here takes longer than all the rest.
 * `read-records.ts` says how they are read.
 */
export function recorded(place: number, word: string, make: (input: unknown) => unknown) {
  const recording = (input: unknown): unknown => {
    const copy = plainCopy(input);
    let json = stringify(copy.value);
    if (json.length > mostJsonCharacters) json = tooMuchText;
    writeRecord(place, json, indexOfCall(open()), copy.allocations);
    const id = made;
    count();
    continueNumberingAt(id);
    if (typeof input !== "object" || input === null) {
      const result = make(input);
      rememberMade(result, word, id);
      return result;
    }
    for (let stranger = copy.strangers; stranger !== undefined; stranger = stranger.next) {
      stranger.holder[stranger.key] = stranger.original;
    }
    const result = make(copy.value);
    rememberMade(result, word, id);
    sameAllocation(result, input);
    return result;
  };
  places.remember(recording, place);
  return recording;
}

/**
 * A call of a word whose argument the host has read in the text, but for the terminals and parts that it names: `given`.
 * Leaves a record with no values but those, and is true; false, and nothing happens, where `word` does not mean a word here.
 */
export function written(site: unknown, word: unknown, ...given: unknown[]): boolean {
  const place = places.placeOf(word);
  if (place === undefined || typeof site !== "number" || site - site !== 0) return false;
  const { length } = given;
  let text = "";
  for (let at = 0; at < length; at++) text += `,${jsonOfGiven(given[at])}`;
  const within = indexOfCall(open());
  makeRoomFor(6);
  let position = used;
  numbers[position++] = 3;
  numbers[position++] = place;
  numbers[position++] = calls++;
  numbers[position++] = site;
  numbers[position++] = within;
  numbers[position++] = length;
  values += text;
  used = position;
  count();
  return true;
}

/** Of what stands for a property that must name something another word made. Whatever else it is, it is nobody's value. */
function jsonOfGiven(value: unknown): string {
  const reference = referenceTo(value);
  if (reference !== undefined) return jsonOf(reference);
  // A misspelt terminal: as `plainCopy` has it.
  if (value === undefined) return '{"$strange":"nothing"}';
  const copy = plainCopy({ value }).value as { readonly value: unknown };
  const json = stringify(copy.value);
  return json.length > mostJsonCharacters ? tooMuchText : json;
}

const tooMuchText = '{"$strange":"more text than fits in one call"}';

// Own properties, so that nothing is looked up on a prototype.
const places = Object.assign(new WeakMap<object, number>(), {
  placeOf: WeakMap.prototype.get as (this: WeakMap<object, number>, word: unknown) => number | undefined,
  remember: WeakMap.prototype.set as (this: WeakMap<object, number>, word: object, place: number) => unknown,
});

function count() {
  made++;
  if (made <= sentAtOnce || made % sentTogether === 0) flush();
}

/** The number of the call that is open now, for the host to say where a plan stopped. */
export function indexOfOpenCall(): number {
  return indexOfCall(open());
}

/** Hands over what is still here. Called by the host when the plan has ended, in whatever way. */
export function flush() {
  // A plan could catch an exception; it cannot catch the interrupt that ends this loop.
  if (emit(values, used, made)) for (;;);
  // Not before it is handed over: memory may end there.
  values = "";
  used = 0;
}

/**
 * Hands over texts (JSON values, each behind a comma), how many of {@link numbers} are used, and how many records were made;
 * true when the host wants no more and the plan must stop.
 */
type Emit = (values: string, used: number, made: number) => boolean;

export function setEmit(given: Emit | undefined) {
  if (given !== undefined) emit = given;
}

/** Tells the library's words the number of the call that is next. */
let continueNumberingAt: (number: number) => void;

export function setNumbering(given: typeof continueNumberingAt) {
  continueNumberingAt = given;
}

const mostNumbers = 1_024;

/** Read by the host. */
export const numbers = new Float64Array(mostNumbers);

/**
 * A call of the host costs as much as making the record. The first records of a plan go over one by one, later ones together;
 * so few that the last ones of a large plan, lost only if its worker must be killed, do not matter.
 */
const sentAtOnce = 8;
const sentTogether = 32;

const mostJsonCharacters = 1_000_000;

/** Of one record, call or allocation, so that each fits in {@link numbers}. */
const mostReferences = 250;

let emit: Emit;
let values = "";
let used = 0;
let made = 0;
let calls = 0;
let allocations = 0;

/**
 * Calls and allocations that have a number but are still to be written. A chain rather than recursion, because calls within calls
 * may be many; a linked one, because a list that grows could be watched.
 */
let pending: Pending | undefined;

interface Pending {
  readonly call: Call | undefined;
  readonly allocation: Allocation | undefined;
  readonly next: Pending | undefined;
}

/** An entry counts only once `used` has moved behind it: a plan that is stopped in the middle leaves none half written. */
function writeRecord(word: number, json: string, call: number, found: AllocationAt | undefined) {
  let text = `,${json}`;
  let known = 0;
  for (let at = found; at !== undefined && known < mostReferences; at = at.next) {
    known++;
    numberOfAllocation(at.allocation);
    if (at.path !== "") text += `,${stringify(at.path)}`;
  }
  if (pending !== undefined) writePending();
  makeRoomFor(4 + 2 * known);
  let position = used;
  numbers[position++] = 2;
  numbers[position++] = word;
  numbers[position++] = call;
  numbers[position++] = known;
  for (let at = found; at !== undefined && known > 0; at = at.next, known--) {
    numbers[position++] = at.path === "" ? 0 : 1;
    numbers[position++] = at.allocation.index;
  }
  values += text;
  used = position;
}

/** Every entry says its own number: should one be lost to an exception, the others still mean what they meant. */
function writePending() {
  while (pending !== undefined) {
    const { call, allocation } = pending;
    pending = pending.next;
    if (call !== undefined) {
      writeEntry(0, Call.index(call), Call.site(call), numberOfCall(Call.within(call)), Call.seen(call));
    } else if (allocation !== undefined) {
      writeEntry(1, allocation.index, allocation.literal, numberOfCall(allocation.call), allocation.seen);
    }
  }
}

function writeEntry(
  kind: number,
  index: number,
  site: unknown,
  call: number,
  seen: readonly (Allocation | undefined)[] | undefined,
) {
  // biome-ignore lint/complexity/useMathMinMax: a plan may have replaced Math.min by now
  const known = seen === undefined ? 0 : seen.length < mostReferences ? seen.length : mostReferences;
  makeRoomFor(5 + known);
  let position = used;
  numbers[position++] = kind;
  numbers[position++] = index;
  // A plan may have called a mark itself, with anything.
  numbers[position++] = typeof site === "number" && site - site === 0 ? site : -1;
  numbers[position++] = call;
  numbers[position++] = known;
  if (seen !== undefined) {
    for (let each = 0; each < known; each++) numbers[position++] = numberOfAllocation(seen[each]);
  }
  used = position;
}

function makeRoomFor(count: number) {
  if (used + count > mostNumbers) flush();
}

function indexOfCall(call: Call | undefined): number {
  const index = numberOfCall(call);
  if (pending !== undefined) writePending();
  return index;
}

function numberOfCall(call: Call | undefined): number {
  if (call === undefined) return -1;
  const known = Call.index(call);
  if (known >= 0) return known;
  Call.number(call, calls);
  pending = { call, allocation: undefined, next: pending };
  return calls++;
}

function numberOfAllocation(allocation: Allocation | undefined): number {
  if (allocation === undefined) return -1;
  if (allocation.index < 0) {
    allocation.index = allocations++;
    pending = { call: undefined, allocation, next: pending };
  }
  return allocation.index;
}
