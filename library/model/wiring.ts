import type { BuildValues } from "./build-properties.ts";
import type { LoadOfCircuit, PartDraft } from "./draft-part.ts";
import type { NetworkRecords } from "./network-records.ts";
import type { Source, Wiring } from "./nominal-voltage.ts";
import { partTraits } from "./part-roles.ts";
import { defaultVoltage } from "./read-run.ts";
import { kindOfWord } from "./terminals.ts";

/** The connections between terminals, and the sources of voltage, as far as the records can be read. */
export function wiringOf({ parts, circuits, cables, terminals }: NetworkRecords, build: BuildValues): Wiring {
  const joined: (readonly [number, number])[] = parts.flatMap(joinedInside);
  for (const { ends } of cables) if (ends) joined.push([ends.from, ends.to]);
  for (const { ends, load } of circuits) {
    const far = ends?.to ?? load;
    if (ends && far) joined.push([ends.from, far.positive], [far.negative, ends.returnTo]);
  }
  const batteries = parts.flatMap((part) => {
    if (part.word !== "battery") return [];
    return sourceAt(part, "positive", "negative", part.values.nominalV ?? build.voltage ?? defaultVoltage);
  });
  return { terminals: terminals.length, joined, batteries, chargers: parts.flatMap(chargerOf) };
}

/** Pairs of terminals that are one piece of metal, or nearly one. */
function joinedInside(part: PartDraft | LoadOfCircuit): readonly (readonly [number, number])[] {
  if (part.word === "circuit") return [];
  const pair = (one: string, other: string): (readonly [number, number])[] => {
    const [a, b] = [part.terminals?.get(one), part.terminals?.get(other)];
    return a === undefined || b === undefined ? [] : [[a, b]];
  };
  if (part.word === "part")
    return (part.values.joins ?? []).flatMap(({ between: [one, other] }) => pair(one, other));
  const { joins } = partTraits[kindOfWord(part.word)];
  if (joins === "stated in the plan" || ("isolated" in part.values && part.values.isolated)) return [];
  return joins.flatMap(([one, other]) => pair(one, other));
}

/** A charger determines a nominal voltage only if its own voltage is stated. */
function chargerOf(part: PartDraft | LoadOfCircuit): readonly Source[] {
  switch (part.word) {
    case "dcDcCharger":
      return sourceAt(part, "outputPositive", "outputNegative", nominalOf(part.values.outputV));
    case "alternator":
    case "shoreCharger":
    case "solarController":
      return sourceAt(part, "positive", "negative", nominalOf(part.values.outputV));
    case "solarArray": {
      // The conductors to the controller are designed for the maximum-power voltage of the panels.
      const { maxPowerV, series = 1 } = part.values;
      return sourceAt(part, "positive", "negative", maxPowerV && maxPowerV * series);
    }
    case "circuit":
    case "battery":
    case "inverter":
    case "load":
    case "motor":
    case "busBar":
    case "fusePanel":
    case "disconnect":
    case "shunt":
    case "chassis":
    case "part":
      return [];
  }
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
  return [{ positive, negative, nominalV }];
}

/** The system voltage for a charger's voltage: the next lower of 12, 24 and 48 V; below 12 V, the charger's voltage itself. */
function nominalOf(outputV: number | undefined): number | undefined {
  return outputV === undefined
    ? undefined
    : ([48, 24, 12].find((nominalV) => nominalV <= outputV) ?? outputV);
}
