import { chargingVoltage } from "../standards/charging-practice.ts";
import { otherPartProperties } from "./distribution-properties.ts";
import type { PartDraft } from "./draft-part.ts";
import type { PartContext } from "./make-parts.ts";
import { grouped } from "./property.ts";
import { defaultVoltage } from "./read-run.ts";
import type { Refusal } from "./read-values.ts";

/** Values of a part that contradict each other, although each is allowed by itself. */
export function contradictionsIn(draft: PartDraft): readonly Refusal[] {
  switch (draft.word) {
    case "inverter": {
      const { continuousW = 0, surgeW, loadW } = draft.values;
      return [
        ...notBelow("surgeW", surgeW, continuousW, "its continuous power", "W"),
        ...notAbove("loadW", loadW, continuousW, "its continuous power", "W"),
      ];
    }
    case "motor": {
      const { runningA = 0, startingA } = draft.values;
      return notBelow("startingA", startingA, runningA, "its running current", "A");
    }
    case "solarArray": {
      const { openCircuitV = 0, shortCircuitA = 0, maxPowerV, maxPowerA } = draft.values;
      return [
        ...notAbove("maxPowerV", maxPowerV, openCircuitV, "the open-circuit voltage", "V"),
        ...notAbove("maxPowerA", maxPowerA, shortCircuitA, "the short-circuit current", "A"),
      ];
    }
    case "part":
      return [...doubtfulNames(draft.values.terminals ?? []), ...unknownEnds(draft.values)];
    case "battery":
    case "alternator":
    case "shoreCharger":
    case "solarController":
    case "dcDcCharger":
    case "load":
    case "busBar":
    case "fusePanel":
    case "disconnect":
    case "shunt":
    case "chassis":
      return [];
  }
}

/** Voltages of a part that are too high for its system. */
export function voltagesTooHigh(draft: PartDraft, { build, nominal }: PartContext): readonly Refusal[] {
  const systemV = (positive: string, negative: string) =>
    nominal.between(draft.terminals!.get(positive)!, draft.terminals!.get(negative)!) ??
    build.voltage ??
    defaultVoltage;
  // A system of this nominal voltage never exceeds this: the device would never run.
  const charged = (nominalV: number) => (chargingVoltage.for12V * nominalV) / 12;
  switch (draft.word) {
    case "load":
    case "motor":
      return notAbove(
        "minimumV",
        draft.values.minimumV,
        systemV("positive", "negative"),
        "the nominal voltage",
        "V",
      );
    case "inverter": {
      const most = charged(systemV("positive", "negative"));
      return notAbove("cutOffV", draft.values.cutOffV, most, "the charging voltage of its system", "V");
    }
    case "dcDcCharger": {
      const most = charged(systemV("inputPositive", "inputNegative"));
      return notAbove(
        "inputMinV",
        draft.values.inputMinV,
        most,
        "the charging voltage of its input side",
        "V",
      );
    }
    case "battery":
    case "alternator":
    case "shoreCharger":
    case "solarArray":
    case "solarController":
    case "busBar":
    case "fusePanel":
    case "disconnect":
    case "shunt":
    case "chassis":
    case "part":
      return [];
  }
}

function notBelow(
  property: string,
  value: number | undefined,
  least: number,
  what: string,
  unit: string,
): Refusal[] {
  if (value === undefined || value >= least) return [];
  return [
    {
      path: [property],
      given: String(value),
      wrong: `is below ${what}, ${grouped(least)} ${unit}`,
      allowed: `${grouped(least)} ${unit} or more`,
    },
  ];
}

function notAbove(
  property: string,
  value: number | undefined,
  most: number,
  what: string,
  unit: string,
): Refusal[] {
  if (value === undefined || value <= most) return [];
  return [
    {
      path: [property],
      given: String(value),
      wrong: `is above ${what}, ${grouped(most)} ${unit}`,
      allowed: `up to ${grouped(most)} ${unit}`,
    },
  ];
}

/** A terminal's name is written after its part, like the part's properties: `relay.in`, `relay.name`. */
function doubtfulNames(names: readonly string[]): Refusal[] {
  return names.flatMap((name, index) => {
    const wrong =
      names.indexOf(name) < index ? "appears twice" : taken.has(name) && "is a property of every part";
    if (!wrong) return [];
    const allowed = "a name of its own for each terminal";
    return [{ path: ["terminals", String(index)], given: JSON.stringify(name), wrong, allowed }];
  });
}

const taken: ReadonlySet<string> = new Set([
  ...otherPartProperties.properties.keys(),
  "kind",
  "id",
  "__proto__",
]);

function unknownEnds({ terminals = [], joins = [] }: (PartDraft & { word: "part" })["values"]): Refusal[] {
  const known = new Set(terminals);
  return joins.flatMap(({ between: [one, other] }, index) => {
    const path = (end: number) => ["joins", String(index), "between", String(end)];
    const allowed = terminals.map((name) => JSON.stringify(name)).join(", ");
    const unknown = [one, other].flatMap((name, end) =>
      known.has(name)
        ? []
        : [{ path: path(end), given: JSON.stringify(name), wrong: "is not one of its terminals", allowed }],
    );
    if (unknown.length === 0 && one === other)
      return [{ path: path(1), given: JSON.stringify(other), wrong: "is connected to itself", allowed }];
    return unknown;
  });
}
