import type { Draw, Part } from "../../model/network.ts";
import { formatExact } from "../../rules/wording/format-number.ts";

/** Buying details of a part: "LiFePO4, 12.8 V, 300 Ah". Only values that the plan states or that its kind is chosen by. */
export function partDetails(part: Part): string {
  switch (part.kind) {
    case "battery":
      return list(part.chemistry, unit(part.nominalV, "V"), unit(part.capacityAh, "Ah"));
    case "busBar":
      return list(rating(part.ratedA), part.studs !== undefined && `${part.studs} studs`);
    case "fusePanel":
      return list(
        `${part.positions} positions`,
        part.ratedA !== undefined && `${unit(part.ratedA, "A")} in all`,
        part.branchRatedA !== undefined && `${unit(part.branchRatedA, "A")} a position`,
        part.hasNegativeBus ? "with negative bus" : "without negative bus",
      );
    case "disconnect":
      return unit(part.ratedA, "A");
    case "shunt":
      return list(unit(part.ratedA, "A"), `${formatExact(part.ohm * part.ratedA * 1000)} mV`);
    case "inverter":
      return list(
        `${unit(part.continuousW, "W")} continuous`,
        part.surgeW !== undefined && `${unit(part.surgeW, "W")} surge`,
      );
    case "dcDcCharger":
      return list(unit(part.outputA, "A"), unit(part.outputV, "V"), part.isolated && "isolated");
    case "alternator":
    case "shoreCharger": {
      const amperes = part.kind === "alternator" ? part.ratedA : part.outputA;
      return list(unit(amperes, "A"), unit(part.outputV, "V"));
    }
    case "solarArray": {
      const { series, parallel } = part;
      const panels = series * parallel;
      return list(
        panels === 1 ? "1 module" : `${panels} modules, ${series} in series, ${parallel} in parallel, each`,
        `${unit(part.openCircuitV, "V")} open circuit`,
        `${unit(part.shortCircuitA, "A")} short circuit`,
      );
    }
    case "solarController":
      return list(`${unit(part.maxInputV, "V")} input`, unit(part.outputA, "A"), part.tracking && "tracking");
    case "load":
      return drawInWords(part.draws);
    case "chassis":
      return "";
    case "part":
      return rating(part.ratedA);
  }
}

function drawInWords(draws: Draw): string {
  switch (draws.as) {
    case "current":
      return unit(draws.currentA, "A");
    case "power":
      return unit(draws.powerW, "W");
    case "resistance":
      return unit(draws.ohm, "Ω");
    case "motor":
      return list(`${unit(draws.runningA, "A")} running`, `${unit(draws.startingA, "A")} starting`);
  }
}

function rating(amperes: number | undefined): string {
  return amperes === undefined ? "rating not stated" : unit(amperes, "A");
}

function unit(value: number, unit: string): string {
  return `${formatExact(value)} ${unit}`;
}

function list(...details: (string | false)[]): string {
  return details.filter(Boolean).join(", ");
}
