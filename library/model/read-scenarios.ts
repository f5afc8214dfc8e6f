import { type RestFrom, restVoltageAt } from "./battery-figures.ts";
import { withArticle } from "./describe-value.ts";
import { isMotor } from "./motor-starts.ts";
import type { BatteryPart, Part } from "./network.ts";
import { isCharging, isConsumer, isStarterMotor, passesCurrentOn } from "./part-roles.ts";
import { descriptorOf } from "./parts/index.ts";
import type { Refusal } from "./run.ts";
import type { ScenarioValues } from "./scenario-properties.ts";
import { isSwitch, type StatedScenario } from "./switch-positions.ts";
import type { WrittenReference, WrittenTerminal } from "./terminal-property.ts";

/** Data of the network that scenarios need. */
export interface ScenarioContext {
  readonly parts: readonly Part[];
  /** Indices of parts: chargers that run although the engine does not. */
  readonly runsAlways: ReadonlySet<number>;
  /**
   * The part that a reference means; if it means none, a text states the error, such as "is a cable". Undefined for a part that is
   * passed over.
   */
  meant(reference: WrittenReference): number | string | undefined;
  /** The nominal voltage of the build, V, and that of the series string of a battery. */
  readonly systemV: number;
  bankNominalV(battery: BatteryPart): number;
}

/** The scenarios of a plan that states none. */
export function builtInScenarios(stage: ScenarioContext): readonly StatedScenario[] {
  const scenario = (name: string, loads: boolean, charging: boolean): StatedScenario => ({
    named: new Set(),
    scenario: {
      name,
      on: stage.parts.map((part) => {
        if (isConsumer(part)) return loads;
        return !isCharging(part) || charging || (loads && stage.runsAlways.has(part.index));
      }),
      starting: stage.parts.map(() => false),
      ...atRest(stage.parts, usualRest),
      sunShare: charging ? 1 : 0,
      momentary: false,
    },
  });
  return [
    scenario("everything on", true, true),
    scenario("on the bank alone", true, false),
    scenario("charging, nothing on", false, true),
    ...(stage.parts.some(isStarterMotor) ? [cranking(scenario("cranking the engine", false, false))] : []),
  ];

  function cranking(alone: StatedScenario): StatedScenario {
    const { on } = alone.scenario;
    const starting = stage.parts.map(isStarterMotor);
    return {
      ...alone,
      scenario: {
        ...alone.scenario,
        on: on.map((is, part) => is || starting[part]!),
        starting,
        momentary: true,
      },
    };
  }
}

/** One scenario of the plan, and its contradictions with the rest of the plan. */
export function readScenario(
  values: ScenarioValues,
  identity: { readonly record: number; readonly name: string },
  stage: ScenarioContext,
): StatedScenario & { readonly invalid: readonly Refusal[] } {
  const invalid: Refusal[] = [];
  const listed = (property: "on" | "off" | "starting") => {
    const list = values[property]?.flatMap((reference, index) => {
      const meant = stage.meant(reference);
      if (meant === undefined) return [];
      const wrong = typeof meant === "string" ? meant : unfit(stage.parts[meant]!, property);
      if (wrong === undefined) return [meant as number];
      const allowed =
        property === "starting" ? "a motor" : "a circuit, load, inverter, battery, charging source or switch";
      invalid.push({ path: [property, String(index)], given: undefined, wrong, allowed });
      return [];
    });
    return list && new Set(list);
  };
  const [on, off, starting] = [listed("on"), listed("off"), listed("starting") ?? new Set<number>()];
  const { selected, invalid: invalidInputs } = selectedInputs(values.selected ?? [], off ?? new Set(), stage);
  const chargeOf = chargesOf(values, stage);
  const { engine = false, shore = false, sunPercent = 0 } = values;
  const isThere = { engine, shore, sun: sunPercent > 0 };
  const charges = (part: Part) => {
    const { chargesWith } = descriptorOf(part);
    if (chargesWith === "engine" && stage.runsAlways.has(part.index)) return true;
    return chargesWith !== undefined && isThere[chargesWith];
  };
  const isOn = (part: Part) => {
    if (starting.has(part.index)) return true;
    if (off?.has(part.index)) return false;
    if (on?.has(part.index)) return true;
    if (isConsumer(part)) return on === undefined;
    return !isCharging(part) || charges(part);
  };
  return {
    invalid: [...invalid, ...invalidInputs, ...chargeOf.invalid],
    named: new Set([...(on ?? []), ...(off ?? []), ...selected.keys()]),
    scenario: {
      ...identity,
      ...(selected.size > 0 && { selected }),
      on: stage.parts.map(isOn),
      starting: stage.parts.map(({ index }) => starting.has(index)),
      ...atRest(stage.parts, (battery) => restOf(battery, values, { stage, charges: chargeOf.of })),
      sunShare: sunPercent / 100,
      momentary: starting.size > 0,
    },
  };
}

/** By part: the inputs that a scenario connects, of the selector switches that it names. */
function selectedInputs(
  listed: readonly WrittenTerminal[],
  off: ReadonlySet<number>,
  stage: ScenarioContext,
): { readonly selected: ReadonlyMap<number, readonly string[]>; readonly invalid: readonly Refusal[] } {
  const selected = new Map<number, readonly string[]>();
  const invalid: Refusal[] = [];
  listed.forEach(({ part: id, of: kind, terminal }, index) => {
    const meant = stage.meant({ kind, id });
    if (meant === undefined) return;
    const part = typeof meant === "string" ? undefined : stage.parts[meant]!;
    const wrong = part ? unfitInput(part, terminal, off) : String(meant);
    if (wrong !== undefined)
      invalid.push({
        ...{ path: ["selected", String(index)], given: undefined, wrong },
        allowed: "an input of a selector switch, such as selector.input1",
      });
    else if (part) selected.set(part.index, [...(selected.get(part.index) ?? []), terminal]);
  });
  return { selected, invalid };
}

/** The reason why a scenario cannot connect this terminal; undefined if it can. */
function unfitInput(part: Part, terminal: string, off: ReadonlySet<number>): string | undefined {
  const inputs = descriptorOf(part).positions?.flatMap(({ selected = [] }) => selected) ?? [];
  if (inputs.length === 0) return `is a terminal of ${part.name}, which is not a selector switch`;
  if (!inputs.includes(terminal)) return "is not one of its inputs";
  return off.has(part.index) ? `is an input of ${part.name}, which is off` : undefined;
}

/** The reason why a part may not be listed; undefined if it may. */
function unfit(part: Part, property: "on" | "off" | "starting"): string | undefined {
  if (property === "starting") return isMotor(part) ? undefined : `is ${part.name}, which is not a motor`;
  if (!passesCurrentOn(part) || isSwitch(part)) return undefined;
  return `is ${withArticle(part.kind)}, which is never off`;
}

/** The charge of single batteries, by part index, in percent. */
function chargesOf(
  { charges = [] }: ScenarioValues,
  stage: ScenarioContext,
): { readonly of: ReadonlyMap<number, number>; readonly invalid: readonly Refusal[] } {
  const of = new Map<number, number>();
  const invalid: Refusal[] = [];
  charges.forEach(({ battery, percent }, index) => {
    // A charge without a valid battery or percentage is refused already.
    if (!battery || percent === undefined) return;
    const meant = stage.meant(battery);
    const part = typeof meant === "number" ? stage.parts[meant] : undefined;
    const wrong =
      part === undefined
        ? (meant as string)
        : part.kind !== "battery"
          ? `is ${part.name}, which is not a battery`
          : of.has(part.index)
            ? "has a charge already"
            : undefined;
    if (wrong !== undefined)
      invalid.push({
        path: ["charges", String(index), "battery"],
        given: undefined,
        wrong,
        allowed: "each battery of this plan once",
      });
    else of.set(part!.index, percent);
  });
  return { of, invalid };
}

interface Rest {
  readonly voltageV: number;
  readonly from: RestFrom;
}

function atRest(parts: readonly Part[], restOf: (battery: BatteryPart) => Rest) {
  const rest = parts.map((part) => (part.kind === "battery" ? restOf(part) : undefined));
  return { restV: rest.map((one) => one?.voltageV), restFrom: rest.map((one) => one?.from) };
}

function usualRest({ usualRestV }: BatteryPart): Rest {
  return { voltageV: usualRestV, from: "usual" };
}

function restOf(
  battery: BatteryPart,
  { chargePercent, bankV }: ScenarioValues,
  { stage, charges }: { readonly stage: ScenarioContext; readonly charges: ReadonlyMap<number, number> },
): Rest {
  const percent = charges.get(battery.index) ?? chargePercent;
  if (percent !== undefined) return restVoltageAt(battery, percent);
  if (bankV === undefined) return usualRest(battery);
  const bankNominalV = stage.bankNominalV(battery);
  const voltageV = (bankV * timesSystem(bankNominalV, stage.systemV) * battery.systemV) / bankNominalV;
  return { voltageV, from: "plan" };
}

/**
 * `bankV` is for a bank of the build's voltage. In a build of 24 V, a starter battery of 12 V rests at half of `bankV`; one of
 * 12.8 V in a build of 12 V rests at `bankV` itself.
 */
function timesSystem(bankNominalV: number, systemV: number): number {
  const times = bankNominalV / systemV;
  return times >= 1 ? Math.round(times) : 1 / Math.round(1 / times);
}
