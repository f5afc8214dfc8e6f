import { words } from "../../../library/model/record.ts";
import type { Allocation, OpenCall, RawRecord, RunOutcome } from "./contract.ts";

/**
 * Converts the recorder's output, batches of entries, to an outcome. An entry is a row of numbers, read one after another:
 *
 *  - 0, number of the call, call site, call it was opened in, count of allocations seen, those allocations;
 *  - 1, number of the allocation, literal, call open then, count of allocations seen, those allocations;
 *  - 2, the function's index in {@link words}, call, count of allocations, and for each: whether it has a path, its number. The
 *    record's input, and the paths, follow in the batch's values;
 *  - 3, the function's index, number of the call, call site, call it was opened in, count of values: a record with its input in
 *    the source text, except those values, which follow in the batch's values;
 *  - 4, the function's index, number of the call, call site, call it was opened in, count of allocations seen, those allocations:
 *    a record of plain values, and its call. Its input follows in the batch's values.
 *
 * A plan cannot reach the recorder, but it can catch the exception when stack or memory runs out while the recorder works, and
 * so lose an entry. References to that entry then become unknown allocations, and all others keep their numbers. Records come
 * in batches, so a few may exceed the limit.
 */
export function readRecords(text: string, mostRecords: number): Read {
  const records: RawRecord[] = [];
  const calls: OpenCall[] = [];
  const allocations: Allocation[] = [];
  for (const { numbers, values } of JSON.parse(`[${text.slice(1)}]`) as Bunch[]) {
    let at = 0;
    let value = 0;
    const next = () => numbers[at++] ?? -1;
    const several = () => {
      const count = next();
      return count <= 0 ? none : Array.from({ length: count }, next);
    };
    const valuesOf = (count: number) => {
      value += Math.max(count, 0);
      return count <= 0 ? none : values.slice(value - count, value);
    };
    while (at < numbers.length) {
      const kind = next();
      if (kind === 0) calls[next()] = { callSite: next(), within: next(), seen: several() };
      else if (kind === 1) allocations[next()] = { literal: next(), call: next(), seen: several() };
      else if (kind === 3) {
        const word = words[next()] ?? "circuit";
        const call = next();
        const callSite = next();
        calls[call] = { callSite, within: next(), seen: none };
        const given = valuesOf(next());
        records.push({
          word,
          input: undefined,
          written: { site: callSite, given },
          call,
          allocations: notBorn,
        });
      } else if (kind === 4) {
        const word = words[next()] ?? "circuit";
        const call = next();
        calls[call] = { callSite: next(), within: next(), seen: several() };
        records.push({ word, input: values[value++], call, allocations: notBorn });
      } else {
        const word = words[next()] ?? "circuit";
        const call = next();
        const input = values[value++];
        let count = next();
        const born: Record<string, number> = count > 0 ? Object.create(null) : notBorn;
        for (; count > 0; count--) {
          const path = next() === 0 ? "" : String(values[value++]);
          born[path] = next();
        }
        records.push({ word, input, call, allocations: born });
      }
    }
  }
  // Usually no entry was lost, and no second pass is needed.
  const complete = !calls.includes(undefined as never) && !allocations.includes(undefined as never);
  const read = { records: records.slice(0, mostRecords), calls, allocations };
  return complete && refersOnlyToKnown(read) ? read : withoutUnknown(read);
}

type Read = Omit<RunOutcome, "end">;

function refersOnlyToKnown({ records, calls, allocations }: Read): boolean {
  const isCall = (index: number) => index < calls.length;
  const isBirth = (index: number) => index < allocations.length;
  return (
    records.every(({ call, allocations: born }) => isCall(call) && Object.values(born).every(isBirth)) &&
    calls.every(({ within, seen }) => isCall(within) && seen.every(isBirth)) &&
    allocations.every(({ call, seen }) => isCall(call) && seen.every(isBirth))
  );
}

function withoutUnknown({ records, calls, allocations }: Read): Read {
  const knownCall = (index: number) => (calls[index] ? index : -1);
  const knownBirth = (index: number) => (allocations[index] ? index : -1);
  return {
    records: records.map((record) => ({
      ...record,
      call: knownCall(record.call),
      allocations: Object.fromEntries(
        Object.entries(record.allocations).filter(([, index]) => knownBirth(index) >= 0),
      ),
    })),
    calls: Array.from(calls, (call) =>
      call
        ? { callSite: call.callSite, within: knownCall(call.within), seen: call.seen.map(knownBirth) }
        : { callSite: -1, within: -1, seen: [] },
    ),
    allocations: Array.from(allocations, (allocation) =>
      allocation
        ? {
            literal: allocation.literal,
            call: knownCall(allocation.call),
            seen: allocation.seen.map(knownBirth),
          }
        : { literal: -1, call: -1, seen: [] },
    ),
  };
}

const none: readonly number[] = Object.freeze([]);
const notBorn: Record<string, number> = Object.freeze({});

/** One batch as text for {@link readRecords}. `values` are JSON values, each behind a comma. */
export function bunchText(numbers: Float64Array, values: string): string {
  return `,{"numbers":[${numbers.join()}],"values":[${values.slice(1)}]}`;
}

interface Bunch {
  readonly numbers: readonly number[];
  readonly values: readonly unknown[];
}
