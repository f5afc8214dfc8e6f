import type { SolvedScenario } from "../../analysis/network-result.ts";
import type { LoadPart, Part } from "../../model/network.ts";
import { formatExact, withUnit } from "../../rules/wording/format-number.ts";
import { kindInWords } from "../../rules/wording/part-in-words.ts";

/** A part's kind and ratings, as the plan states them: "AGM battery, 12 V, 110 Ah". */
export function ratingInWords(part: Part): string {
  const kind = kindWithChemistry(part);
  // A panel that is called "fuse panel" does not need its kind repeated.
  return [...(part.name === kind ? [] : [kind]), ...ratingsOf(part)].join(", ");
}

/** A part's voltage and current in a scenario: "13.2 V · gives 103 A". Empty if neither was calculated. */
export function operatingWords(part: Part, { partV, partA, inputA }: SolvedScenario): string {
  const voltageV = partV[part.index];
  const words = [currentInWords(part, partA[part.index] ?? Number.NaN, inputA[part.index] ?? 0)];
  if (voltageV !== undefined && Number.isFinite(voltageV)) words.unshift(withUnit(voltageV, "V"));
  return words.filter(Boolean).join(" · ");
}

function kindWithChemistry(part: Part): string {
  return part.kind === "battery" ? `${part.chemistry} battery` : kindInWords(part);
}

function ratingsOf(part: Part): string[] {
  switch (part.kind) {
    case "battery":
      return [`${formatExact(part.nominalV)} V`, `${formatExact(part.capacityAh)} Ah`];
    case "inverter":
      return [`${formatExact(part.continuousW)} W`];
    case "dcDcCharger":
    case "shoreCharger":
    case "solarController":
      return [`${formatExact(part.outputA)} A at ${formatExact(part.outputV)} V`];
    case "alternator":
      return [`${formatExact(part.ratedA)} A`];
    case "solarArray":
      return [
        `${part.series} × ${part.parallel} modules of ${withUnit(part.maxPowerV * part.maxPowerA, "W")}`,
      ];
    case "load":
      return [drawInWords(part)];
    case "fusePanel":
      return [`${part.positions} positions`, ...ratedInWords(part.ratedA)];
    case "busBar":
    case "disconnect":
    case "shunt":
    case "part":
      return ratedInWords(part.ratedA);
    case "chassis":
      return [];
  }
}

function ratedInWords(ratedA: number | undefined): string[] {
  return ratedA === undefined ? [] : [`${formatExact(ratedA)} A`];
}

function drawInWords({ draws }: LoadPart): string {
  switch (draws.as) {
    case "current":
      return `${formatExact(draws.currentA)} A`;
    case "power":
      return `${formatExact(draws.powerW)} W`;
    case "resistance":
      return withUnit(draws.ohm, "Ω");
    case "motor":
      return `${formatExact(draws.runningA)} A, starting ${formatExact(draws.startingA)} A`;
  }
}

/** Below this, a figure is the solver's rounding, not a current. */
const leastCurrentA = 1e-6;

function currentInWords(part: Part, currentA: number, inputA: number): string {
  if (!Number.isFinite(currentA)) return "";
  const size = Math.abs(currentA) < leastCurrentA ? 0 : Math.abs(currentA);
  const amount = withUnit(size, "A");
  switch (part.kind) {
    case "battery":
      return size === 0 ? amount : currentA < 0 ? `takes ${amount}` : `gives ${amount}`;
    case "dcDcCharger":
    case "solarController":
      return size === 0 ? "off" : `takes ${withUnit(Math.max(inputA, 0), "A")}, gives ${amount}`;
    case "alternator":
    case "shoreCharger":
    case "solarArray":
      return `gives ${amount}`;
    case "load":
      // Its line shows its current.
      return size === 0 ? "off" : "";
    case "inverter":
      return size === 0 ? "off" : `takes ${amount}`;
    case "busBar":
    case "fusePanel":
    case "disconnect":
    case "shunt":
    case "chassis":
    case "part":
      return `passes ${amount}`;
  }
}
