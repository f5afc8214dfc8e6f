import { type Allocation, birthOf, Call, enter, leave, open, sameAllocation } from "./allocations.ts";
import { type AllocationAt, plainCopy } from "./plain-copy.ts";
import { between, stringify } from "./primordials.ts";
import { jsonOf, referenceTo, rememberMade } from "./references.ts";

/**
 * A DSL function that also leaves a record of each call. It returns the result of the library's own function, numbered by its
 * record. `place` is the host's index of the function. The numeric parts of a record are written as numbers: making text of
 * them here takes longer than all the rest. `read-records.ts` documents the format.
 */
export function recorded(place: number, word: string, make: (input: unknown) => unknown) {
  const recording = (input: unknown): unknown => {
    const copy = plainCopy(input);
    writeRecord(place, jsonOfInput(copy.value), indexOfCall(open()), copy.allocations);
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
 * A call of a DSL function with an argument that the host has read from the text, except the terminals and parts that it names:
 * `given`. Returns true and leaves a record with only those values. Returns false without any effect if `word` is not a DSL
 * function here.
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
  settleFlat();
  values += text;
  used = position;
  count();
  return true;
}

/**
 * A call of a DSL function with a result that the plan does not use: leaves a record and makes no result. `seen` is the one
 * object observed at the call, if any. Records of plain values are turned into JSON together, when they are handed over.
 */
export function unused(site: unknown, seen: unknown, word: unknown, input: unknown): void {
  const place = places.placeOf(word);
  if (place === undefined || typeof site !== "number" || site - site !== 0) return;
  const copy = plainCopy(input);
  const within = indexOfCall(open());
  const allocation = numberOfAllocation(birthOf(seen));
  const call = calls++;
  if (pending !== undefined) writePending();
  if (copy.isFlat) {
    makeRoomFor(7);
    let position = used;
    numbers[position++] = 4;
    numbers[position++] = place;
    numbers[position++] = call;
    numbers[position++] = site;
    numbers[position++] = within;
    numbers[position++] = allocation < 0 ? 0 : 1;
    if (allocation >= 0) numbers[position++] = allocation;
    flat[flatCount++] = copy.value;
    used = position;
  } else {
    makeRoomFor(6);
    let position = used;
    numbers[position++] = 0;
    numbers[position++] = call;
    numbers[position++] = site;
    numbers[position++] = within;
    numbers[position++] = allocation < 0 ? 0 : 1;
    if (allocation >= 0) numbers[position++] = allocation;
    used = position;
    writeRecord(place, jsonOfInput(copy.value), call, copy.allocations);
  }
  made++;
  if (!isDue()) return;
  // If the plan is stopped here, it is at this call.
  const before = enter(site);
  Call.number(open() as Call, call);
  flush();
  leave(before, undefined);
}

/**
 * JSON for a property that must refer to the result of another DSL function. Any other value is copied without its allocations.
 */
function jsonOfGiven(value: unknown): string {
  const reference = referenceTo(value);
  if (reference !== undefined) return jsonOf(reference);
  // A misspelt terminal, described as in `plainCopy`.
  if (value === undefined) return '{"$strange":"nothing"}';
  const copy = plainCopy({ value }).value as { readonly value: unknown };
  return jsonOfInput(copy.value);
}

function jsonOfInput(copy: unknown): string {
  const json = stringify(copy);
  return json.length > mostJsonCharacters ? tooMuchText : json;
}

const tooMuchText = '{"$strange":"more text than fits in one call"}';

// Own properties: no lookup on a prototype.
const places = Object.assign(new WeakMap<object, number>(), {
  placeOf: WeakMap.prototype.get as (this: WeakMap<object, number>, word: unknown) => number | undefined,
  remember: WeakMap.prototype.set as (this: WeakMap<object, number>, word: object, place: number) => unknown,
});

function count() {
  made++;
  if (isDue()) flush();
}

function isDue(): boolean {
  return made <= sentAtOnce || made % sentTogether === 0;
}

/** The number of the open call, from which the host reports where a plan stopped. */
export function indexOfOpenCall(): number {
  return indexOfCall(open());
}

/** Hands over the remaining data. Called by the host after every end of a plan. */
export function flush() {
  settleFlat();
  // A plan could catch an exception; it cannot catch the interrupt that ends this loop.
  if (emit(values, used, made)) for (;;);
  // Not before it is handed over: memory may run out there.
  values = "";
  used = 0;
}

/**
 * Turns the inputs of {@link flat} into text. Values keep the order of their entries. The engine's own JSON.stringify can run a
 * setter that a plan put on `Array.prototype`; if that made a record meanwhile, the text is made again.
 */
function settleFlat() {
  while (flatCount > 0) {
    const count = flatCount;
    flat.length = count;
    const text = stringify(flat);
    if (flatCount !== count) continue;
    flatCount = 0;
    if (text.length <= mostJsonCharacters) values += `,${between(text, 1, text.length - 1)}`;
    else for (let at = 0; at < count; at++) values += `,${jsonOfInput(flat[at])}`;
  }
}

/**
 * Hands over texts (JSON values, each behind a comma), the used count of {@link numbers}, and the number of records made.
 * Returns true when the host wants no more and the plan must stop.
 */
type Emit = (values: string, used: number, made: number) => boolean;

export function setEmit(given: Emit | undefined) {
  if (given !== undefined) emit = given;
}

/** Sets the number of the next call in the library's own functions. */
let continueNumberingAt: (number: number) => void;

export function setNumbering(given: typeof continueNumberingAt) {
  continueNumberingAt = given;
}

const mostNumbers = 1_024;

/** Read by the host. */
export const numbers = new Float64Array(mostNumbers);

/**
 * A call of the host costs as much as making the record. The first records of a plan are sent one by one, later ones in groups.
 * The groups are small: the last one of a large plan is lost only if its worker must be killed, and does not matter.
 */
const sentAtOnce = 8;
const sentTogether = 32;

const mostJsonCharacters = 1_000_000;

/** Limit for one record, call or allocation: each fits in {@link numbers}. */
const mostReferences = 250;

let emit: Emit;
let values = "";
/** Plain inputs that are not text yet. Without prototype: a plan could observe how another list grows. */
const flat: unknown[] = Object.setPrototypeOf([], null);
let flatCount = 0;
let used = 0;
let made = 0;
let calls = 0;
let allocations = 0;

/**
 * Calls and allocations that have a number but are not written yet. A chain rather than recursion, because calls may be deeply
 * nested; a linked list, because a plan could observe a growing array.
 */
let pending: Pending | undefined;

interface Pending {
  readonly call: Call | undefined;
  readonly allocation: Allocation | undefined;
  readonly next: Pending | undefined;
}

/** An entry counts only once `used` has moved past it: a plan that is stopped in the middle leaves no half-written entry. */
function writeRecord(word: number, json: string, call: number, found: AllocationAt | undefined) {
  settleFlat();
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

/** Every entry contains its own number: if one is lost to an exception, the others keep their meaning. */
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
  // A plan may have called a hook itself, with any argument.
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
