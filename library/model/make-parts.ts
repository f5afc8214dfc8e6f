import { alternatorShare, chargingVoltage } from "../standards/charging-practice.ts";
import type { Citation } from "../standards/citation.ts";
import {
  cutOffVoltage,
  dcDcChargerEfficiency,
  inverterEfficiency,
  shuntVoltage,
  solarControllerEfficiency,
} from "../standards/device-practice.ts";
import { internalResistanceOf, restVoltageAt, restVoltages } from "./battery-figures.ts";
import type { BuildValues } from "./build-properties.ts";
import type { LoadOfCircuit, PartDraft } from "./draft-part.ts";
import type { Draw, LoadPart, Part } from "./network.ts";
import type { NominalVoltages } from "./nominal-voltage.ts";
import { acceptedIn, defaultVoltage, dropLimitOf } from "./read-run.ts";
import type { CircuitRun } from "./run.ts";
import { statedInPlan } from "./stated-in-plan.ts";

/** A part with every default filled in. Its draft must be valid. */
export function makePart(draft: PartDraft, { build, nominal }: PartContext): Part {
  const at = (name: string) => draft.terminals!.get(name)!;
  const base = {
    index: draft.index,
    record: draft.record,
    name: draft.name,
    terminals: Object.fromEntries(draft.terminals!) as never,
    ...(draft.values.source !== undefined && { source: draft.values.source }),
    ...(draft.values.price !== undefined && { price: draft.values.price }),
    accept: acceptedIn(draft.values.accept),
  };
  const buildV = build.voltage ?? defaultVoltage;
  const nominalV = (positive = "positive", negative = "negative") =>
    nominal.between(at(positive), at(negative)) ?? buildV;
  const for12V = (volts: number, systemV: number) => (volts * systemV) / 12;
  const efficiencyOr = (
    usual: { readonly percent: number; readonly source: Citation },
    stated: number | undefined,
  ) =>
    stated === undefined
      ? { efficiencyPercent: usual.percent, efficiencySource: usual.source }
      : { efficiencyPercent: stated, efficiencySource: statedInPlan(draft.values.source) };
  /** Inverters and chargers are among the devices with the closer limit of ISO 10133. */
  const { critical: _, ...closerDropLimit } = dropLimitOf({ critical: true }, build);
  /** The stated values unchanged; omitted values stay omitted. */
  const optional = <Values extends object, Name extends keyof Values>(values: Values, ...names: Name[]) =>
    Object.fromEntries(
      names.flatMap((name) => (values[name] === undefined ? [] : [[name, values[name]]])),
    ) as { [N in Name]?: NonNullable<Values[N]> };

  switch (draft.word) {
    case "battery": {
      const { values } = draft;
      const [chemistry, capacityAh] = [values.chemistry!, values.capacityAh!];
      const ownV = values.nominalV ?? buildV;
      const fullV = restVoltageAt({ chemistry, nominalV: ownV }, 100)!;
      return {
        ...base,
        kind: "battery",
        chemistry,
        nominalV: ownV,
        capacityAh,
        internal: internalResistanceOf({ ...values, chemistry, capacityAh }, ownV, fullV),
        fullV,
        fullVSource: restVoltages(chemistry).source,
        ...optional(values, "shortCircuitA", "maxDischargeA", "maxChargeA"),
      };
    }
    case "busBar":
      return { ...base, kind: "busBar", ...optional(draft.values, "ratedA", "studs") };
    case "fusePanel": {
      const { positions, negativeBus } = draft.values;
      return {
        ...base,
        kind: "fusePanel",
        positions: positions!,
        hasNegativeBus: negativeBus ?? true,
        ...optional(draft.values, "ratedA", "branchRatedA"),
      };
    }
    case "disconnect":
      return { ...base, kind: "disconnect", ratedA: draft.values.ratedA! };
    case "shunt": {
      const { ratedA, ratedMV = shuntVoltage.ratedMV } = draft.values;
      return { ...base, kind: "shunt", ratedA: ratedA!, ohm: ratedMV / 1_000 / ratedA! };
    }
    case "inverter": {
      const { continuousW, efficiencyPercent, cutOffV, idleW, loadW } = draft.values;
      return {
        ...base,
        kind: "inverter",
        continuousW: continuousW!,
        ...efficiencyOr(inverterEfficiency, efficiencyPercent),
        cutOffV: cutOffV ?? for12V(cutOffVoltage.for12V, nominalV()),
        cutOffVSource: cutOffV === undefined ? cutOffVoltage.source : statedInPlan(draft.values.source),
        idleW: idleW ?? 0,
        loadW: loadW ?? continuousW!,
        ...closerDropLimit,
        ...optional(draft.values, "surgeW"),
      };
    }
    case "dcDcCharger": {
      const { outputA, outputV, efficiencyPercent, inputMinV, isolated } = draft.values;
      const inputV = nominalV("inputPositive", "inputNegative");
      return {
        ...base,
        kind: "dcDcCharger",
        outputA: outputA!,
        outputV: outputV ?? for12V(chargingVoltage.for12V, nominalV("outputPositive", "outputNegative")),
        ...efficiencyOr(dcDcChargerEfficiency, efficiencyPercent),
        inputMinV: inputMinV ?? for12V(cutOffVoltage.for12V, inputV),
        inputMinVSource: inputMinV === undefined ? cutOffVoltage.source : statedInPlan(draft.values.source),
        isolated: isolated ?? false,
        ...closerDropLimit,
        ...optional(draft.values, "inputMaxA"),
      };
    }
    case "alternator": {
      const { ratedA, outputV, continuousPercent, selfLimiting } = draft.values;
      const usual = continuousPercent === undefined;
      return {
        ...base,
        kind: "alternator",
        ratedA: ratedA!,
        outputV: outputV ?? for12V(chargingVoltage.for12V, nominalV()),
        continuousPercent: continuousPercent ?? alternatorShare.continuousPercent,
        continuousSource: usual ? alternatorShare.source : statedInPlan(draft.values.source),
        selfLimiting: selfLimiting ?? true,
      };
    }
    case "shoreCharger": {
      const { outputA, outputV } = draft.values;
      return {
        ...base,
        kind: "shoreCharger",
        outputA: outputA!,
        outputV: outputV ?? for12V(chargingVoltage.for12V, nominalV()),
      };
    }
    case "solarArray": {
      const { openCircuitV, shortCircuitA, maxPowerV, maxPowerA, series, parallel } = draft.values;
      const lowestC = draft.values.lowestC ?? build.lowestC;
      return {
        ...base,
        kind: "solarArray",
        openCircuitV: openCircuitV!,
        shortCircuitA: shortCircuitA!,
        maxPowerV: maxPowerV!,
        maxPowerA: maxPowerA!,
        series: series ?? 1,
        parallel: parallel ?? 1,
        ...(lowestC !== undefined && { lowestC }),
        ...optional(draft.values, "openCircuitPercentPerC", "maxSeriesFuseA", "stringFuseA"),
      };
    }
    case "solarController": {
      const { maxInputV, outputA, outputV, tracking, efficiencyPercent } = draft.values;
      return {
        ...base,
        kind: "solarController",
        maxInputV: maxInputV!,
        outputA: outputA!,
        outputV: outputV ?? for12V(chargingVoltage.for12V, nominalV()),
        tracking: tracking ?? true,
        ...efficiencyOr(solarControllerEfficiency, efficiencyPercent),
      };
    }
    case "chassis":
      return { ...base, kind: "chassis", ohm: draft.values.milliohm! / 1_000 };
    case "load": {
      const { currentA, powerW, resistanceOhm } = draft.values;
      const draws: Draw =
        currentA !== undefined
          ? { as: "current", currentA }
          : powerW !== undefined
            ? { as: "power", powerW }
            : { as: "resistance", ohm: resistanceOhm! };
      return { ...base, kind: "load", draws, ...judgedAs(draft.values, nominalV(), build), statedBy: "load" };
    }
    case "motor": {
      const { runningA, startingA } = draft.values;
      const draws = { as: "motor", runningA: runningA!, startingA: startingA! } as const;
      return {
        ...base,
        kind: "load",
        draws,
        ...judgedAs(draft.values, nominalV(), build),
        statedBy: "motor",
      };
    }
    case "part": {
      const joins = (draft.values.joins ?? []).map(({ between: [one, other], milliohm }) => ({
        between: [at(one), at(other)] as const,
        ohm: (milliohm ?? 0) / 1_000,
      }));
      return { ...base, kind: "part", joins, ...optional(draft.values, "ratedA") };
    }
  }
}

export interface PartContext {
  readonly build: BuildValues;
  readonly nominal: NominalVoltages;
}

/** The load that a circuit states itself. Returns the same object for the same circuit at the same place. */
export function makeLoadOfCircuit(draft: LoadOfCircuit, circuit: CircuitRun): LoadPart {
  const before = loadsMade.get(circuit);
  if (before?.index === draft.index && before.terminals.positive === draft.positive) return before;
  const load = loadOf(draft, circuit);
  loadsMade.set(circuit, load);
  return load;
}

const loadsMade = new WeakMap<CircuitRun, LoadPart>();

function loadOf({ index, positive, negative }: LoadOfCircuit, circuit: CircuitRun): LoadPart {
  const { loadA, loadW, minimumV, critical, continuous, dropLimitPercent, dropLimitStated, systemV } =
    circuit;
  return {
    kind: "load",
    index,
    record: circuit.record,
    name: circuit.name,
    terminals: { positive, negative },
    accept: circuit.accept,
    draws: loadW === undefined ? { as: "current", currentA: loadA } : { as: "power", powerW: loadW },
    ...(minimumV !== undefined && { minimumV }),
    critical,
    continuous,
    dropLimitPercent,
    dropLimitStated,
    systemV,
    statedBy: "circuit",
  };
}

function judgedAs(
  values: (PartDraft & { readonly word: "load" | "motor" })["values"],
  systemV: number,
  build: BuildValues,
) {
  return {
    ...(values.minimumV !== undefined && { minimumV: values.minimumV }),
    continuous: values.continuous ?? build.continuous ?? true,
    ...dropLimitOf(values, build),
    systemV,
  };
}
