import type { BatteryPart, Network, Part } from "../../model/network.ts";
import { formatRounded, withUnit } from "../../rules/wording/format-number.ts";
import { chargingVoltage } from "../../standards/charging-practice.ts";
import type { Citation } from "../../standards/citation.ts";
import { shuntVoltage, surgeDuration } from "../../standards/device-practice.ts";
import { coldVoltageFactors } from "../../standards/solar-factors.ts";
import { usualChargeRates } from "../../standards/usual-charge-rates.ts";
import type { Assumption } from "./assumption.ts";

const ownPractice = "common practice, no source";

/** Defaults taken for the parts of a network because they are not stated, and the scenarios it was solved with. */
export function assumptionsOfParts(network: Network): readonly Assumption[] {
  return [...network.parts.flatMap(assumptionsOf), ...assumptionsOfScenarios(network)];
}

function assumptionsOf(part: Part): readonly Assumption[] {
  const taken = (what: string, takenAs: string, source: Citation | string): readonly Assumption[] => [
    { what, takenAs, where: part.name, source },
  ];
  const unlessStated = (what: string, takenAs: string, source: Citation) =>
    source.authority === "stated in the plan" ? [] : taken(what, takenAs, source);
  const outputV = (volts: number, nominal12: number) =>
    // A stated voltage equal to the default is indistinguishable from the default, which is fine.
    isUsual(volts, nominal12) ? taken("Output voltage", withUnit(volts, "V"), chargingVoltage.source) : [];
  switch (part.kind) {
    case "battery":
      return assumptionsOfBattery(part);
    case "shunt":
      return isUsual(part.ohm * part.ratedA * 1000, shuntVoltage.ratedMV)
        ? taken(
            "Voltage at the rated current",
            `${formatRounded(shuntVoltage.ratedMV)} mV`,
            shuntVoltage.source,
          )
        : [];
    case "inverter":
      return [
        ...unlessStated("Efficiency", withUnit(part.efficiencyPercent, "%"), part.efficiencySource),
        ...unlessStated("Voltage at which it switches off", withUnit(part.cutOffV, "V"), part.cutOffVSource),
        ...(part.loadW === part.continuousW
          ? taken("Load on it", `its continuous power, ${withUnit(part.loadW, "W")}`, ownPractice)
          : []),
        ...(part.idleW === 0 ? taken("Its own consumption", withUnit(0, "W"), ownPractice) : []),
        ...(part.surgeW === undefined
          ? []
          : taken(
              "How long its surge lasts",
              `${formatRounded(surgeDuration.seconds)} s`,
              surgeDuration.source,
            )),
      ];
    case "dcDcCharger":
      return [
        ...unlessStated("Efficiency", withUnit(part.efficiencyPercent, "%"), part.efficiencySource),
        ...unlessStated(
          "Minimum input voltage for its full output",
          withUnit(part.inputMinV, "V"),
          part.inputMinVSource,
        ),
        ...outputV(part.outputV, chargingVoltage.for12V),
        ...(part.isolated ? [] : taken("Negatives of input and output", "one inside", ownPractice)),
      ];
    case "alternator":
      return [
        ...unlessStated(
          "Its continuous output",
          `${withUnit(part.continuousPercent, "%")} of its rating`,
          part.continuousSource,
        ),
        ...outputV(part.outputV, chargingVoltage.for12V),
        ...(part.selfLimiting
          ? taken("Maximum current", "its rating: it limits its current", ownPractice)
          : []),
      ];
    case "shoreCharger":
      return outputV(part.outputV, chargingVoltage.for12V);
    case "solarController":
      return [
        ...unlessStated("Efficiency", withUnit(part.efficiencyPercent, "%"), part.efficiencySource),
        ...outputV(part.outputV, chargingVoltage.for12V),
        ...(part.tracking ? taken("Its draw from the modules", "their maximum power", ownPractice) : []),
      ];
    case "fusePanel":
      return part.hasNegativeBus ? taken("Negative bus", "there is one", ownPractice) : [];
    case "solarArray":
      return part.openCircuitPercentPerC === undefined && part.lowestC !== undefined
        ? taken("Rise of its voltage in the cold", "that of crystalline silicon", coldVoltageFactors.source)
        : [];
    case "load":
    case "busBar":
    case "disconnect":
    case "chassis":
    case "part":
      return [];
  }
}

function assumptionsOfBattery(part: BatteryPart): readonly Assumption[] {
  const { name: where, internal, shortCircuitA, chemistry } = part;
  const [low, high] = [internal.lowOhm, internal.highOhm].map((ohm) => formatRounded(ohm * 1000));
  const estimated: Assumption = {
    what: "Internal resistance",
    takenAs:
      shortCircuitA === undefined
        ? `${low} mΩ for the maximum fault, ${high} mΩ for the minimum one and in use`
        : `${high} mΩ in use; the maximum fault is stated in the plan`,
    where,
    source: internal.source,
  };
  return [
    ...(internal.stated ? [] : [estimated]),
    {
      what: "Voltage at rest, full, for the maximum fault",
      takenAs: withUnit(part.fullV, "V"),
      where,
      source: part.fullVSource,
    },
    ...(part.maxChargeA === undefined
      ? [
          {
            what: "Maximum charging current",
            takenAs: `${withUnit(usualChargeRates.greatestPerAh[chemistry] * part.capacityAh, "A")}, usual for ${chemistry}`,
            where,
            source: usualChargeRates.source,
          },
        ]
      : []),
  ];
}

/** Voltages at rest are defaults if a scenario states none, or states how full the bank is. */
function assumptionsOfScenarios({ scenarios, parts }: Network): readonly Assumption[] {
  const batteries = parts.filter((part): part is BatteryPart => part.kind === "battery");
  const atNominal = scenarios.filter(({ restV }) =>
    batteries.some(({ index, nominalV }) => restV[index] === nominalV),
  );
  const builtIn = scenarios.filter(({ record }) => record === undefined);
  const names = (of: Network["scenarios"]) => of.map(({ name }) => `"${name}"`).join(", ");
  return [
    {
      what: "Scenarios",
      takenAs: "the usual ones, because the plan names none",
      where: names(builtIn),
      source: ownPractice,
    },
    {
      what: "Voltage of the batteries at rest",
      takenAs: "their nominal voltage",
      where: names(atNominal),
      source: ownPractice,
    },
  ];
}

/** Of 12 V, or in proportion for 24 and 48 V. */
function isUsual(value: number, for12V: number): boolean {
  return [1, 2, 3, 4].some((times) => Math.abs(value - times * for12V) < 1e-9 * value);
}
