import type { Birth, OpenCall, RawRecord, RunOutcome } from "../sandbox.ts";

/**
 * Makes an outcome of what the recorder wrote: JSON lists, each behind a comma. A plan cannot reach the recorder, but it can
 * catch the exception when stack or memory ends while the recorder works, and so lose a list; what referred to it is then
 * of unknown birth, and everything else keeps its number. Records come in bunches, so a few may be above the limit.
 */
export function readRecords(text: string, mostRecords: number): Omit<RunOutcome, "stopped"> {
  const records: RawRecord[] = [];
  const calls: OpenCall[] = [];
  const births: Birth[] = [];
  for (const line of JSON.parse(`[${text.slice(1)}]`) as Line[]) {
    if (line[0] === "record") {
      const [, word, input, call, born] = line;
      records.push({ word, input, call, births: born });
    } else if (line[0] === "call") {
      const [, index, callSite, within, seen = []] = line;
      calls[index] = { callSite, within, seen };
    } else {
      const [, index, literal, call, seen = []] = line;
      births[index] = { literal, call, seen };
    }
  }
  const knownCall = (index: number) => (calls[index] ? index : -1);
  const knownBirth = (index: number) => (births[index] ? index : -1);
  return {
    records: records.slice(0, mostRecords).map((record) => ({
      ...record,
      call: knownCall(record.call),
      births: Object.fromEntries(Object.entries(record.births).filter(([, index]) => knownBirth(index) >= 0)),
    })),
    calls: Array.from(calls, (call) =>
      call
        ? { callSite: call.callSite, within: knownCall(call.within), seen: call.seen.map(knownBirth) }
        : { callSite: -1, within: -1, seen: [] },
    ),
    births: Array.from(births, (birth) =>
      birth
        ? { literal: birth.literal, call: knownCall(birth.call), seen: birth.seen.map(knownBirth) }
        : { literal: -1, call: -1, seen: [] },
    ),
  };
}

/** As `inside/recorder.ts` writes them. */
type Line =
  | readonly ["record", word: RawRecord["word"], input: unknown, call: number, births: Record<string, number>]
  | readonly ["call", index: number, callSite: number, within: number, seen?: number[]]
  | readonly ["birth", index: number, literal: number, call: number, seen?: number[]];
