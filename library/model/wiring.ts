import { lowestVoltageFor, lowestVoltageOf, systemVoltageOf } from "./battery-figures.ts";
import type { BuildValues } from "./build-properties.ts";
import type { LoadOfCircuit, PartDraft } from "./draft-part.ts";
import type { NetworkRecords } from "./network-records.ts";
import type { Source, Wiring } from "./nominal-voltage.ts";
import { asClosed } from "./parts/define-part.ts";
import { descriptorOfWord } from "./parts/index.ts";
import { defaultVoltage } from "./read-run.ts";
import { isSamePlainData } from "./same-plain-data.ts";

/** The connections between terminals, and the sources of voltage, as far as the records can be read. */
export function wiringOf(records: NetworkRecords, build: BuildValues): Wiring {
  const { parts, circuits, cables, terminals, byRecord } = records;
  const joined: (readonly [number, number])[] = parts.flatMap(joinedInside);
  for (const [record, terminal] of records.mountedOn) {
    const line = byRecord.get(record)?.terminals?.get("line");
    if (line !== undefined) joined.push([terminal, line]);
  }
  for (const { ends } of cables) if (ends) joined.push([ends.from, ends.to]);
  for (const { ends, load } of circuits) {
    const far = ends?.to ?? load;
    if (ends && far) joined.push([ends.from, far.positive], [far.negative, ends.returnTo]);
  }
  const batteries = parts.flatMap((part) => {
    if (part.word !== "battery") return [];
    const { chemistry, nominalV = build.voltage ?? defaultVoltage } = part.values;
    // Without a chemistry the battery is refused, and no current is calculated.
    const label = { chemistry: chemistry ?? ("flooded lead-acid" as const), nominalV };
    return sourceAt(part, "positive", "negative", systemVoltageOf(label)).map((source) => ({
      ...source,
      lowestV: lowestVoltageOf(label),
    }));
  });
  return { terminals: terminals.length, joined, batteries, chargers: parts.flatMap(chargerOf) };
}

/** Whether two plans connect and supply the same terminals: loads and devices make no difference. */
export function isSameWiring(one: Wiring, other: Wiring): boolean {
  return (
    one.terminals === other.terminals &&
    isSameList(one.joined, other.joined, ([a, b], [c, d]) => a === c && b === d) &&
    isSameList(one.batteries, other.batteries, isSamePlainData) &&
    isSameList(one.chargers, other.chargers, isSamePlainData)
  );
}

function isSameList<Item>(
  one: readonly Item[],
  other: readonly Item[],
  isSame: (one: Item, other: Item) => boolean,
): boolean {
  return one.length === other.length && one.every((item, index) => isSame(item, other[index]!));
}

/** Pairs of terminals that are one piece of metal, or nearly one. */
export function joinedInside(part: PartDraft | LoadOfCircuit): readonly (readonly [number, number])[] {
  if (part.word === "circuit") return [];
  const inside =
    part.word === "part" ? part.values.joins : descriptorOfWord(part.word).inside?.(part.values, asClosed);
  return (inside ?? []).flatMap(({ between: [one, other] }): (readonly [number, number])[] => {
    const [a, b] = [part.terminals?.get(one), part.terminals?.get(other)];
    return a === undefined || b === undefined ? [] : [[a, b]];
  });
}

/** A charger determines a nominal voltage only if its own voltage is stated. */
function chargerOf(part: PartDraft | LoadOfCircuit): readonly Source[] {
  if (part.word === "circuit") return [];
  const { ports, determinesV } = descriptorOfWord(part.word);
  const nominalV = determinesV?.(part.values);
  return ports.flatMap(({ does, positive, negative }) =>
    does === "feeds" ? sourceAt(part, positive, negative, nominalV) : [],
  );
}

function sourceAt(
  { terminals }: PartDraft,
  positiveName: string,
  negativeName: string,
  nominalV: number | undefined,
): readonly Source[] {
  const positive = terminals?.get(positiveName);
  const negative = terminals?.get(negativeName);
  if (positive === undefined || negative === undefined || nominalV === undefined) return [];
  return [{ positive, negative, nominalV, lowestV: lowestVoltageFor(nominalV) }];
}
