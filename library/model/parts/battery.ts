import type { Citation } from "../../standards/citation.ts";
import { usualChargeRates } from "../../standards/usual-charge-rates.ts";
import { chemistries } from "../allowed-values.ts";
import {
  cellVoltageOf,
  fullVoltageOf,
  type InternalResistance,
  internalResistanceOf,
  systemVoltageOf,
} from "../battery-figures.ts";
import { coldestDay, current, nominalVoltage } from "../part-properties.ts";
import { amount, ofBalance, oneOf } from "../property.ts";
import { type ComparedFigure, definePart, type PartOf } from "./define-part.ts";
import { defaulted, input, optional, required } from "./part-property.ts";
import type { Phrase } from "./phrase.ts";
import { feeds, poles } from "./poles.ts";

const shareOfCharge = ofBalance(amount("a share of a full charge", "%", { from: 0, upTo: 95 }));

export const battery = definePart("battery", {
  called: { word: "battery", saidBy: /batter(y|ies)|bank/i },
  role: "source",
  terminals: poles,
  ports: feeds,
  formsStrings: true,
  hasDataSheet: true,
  properties: {
    chemistry: required(oneOf(chemistries, "is not a chemistry in the tables"), {
      words: "chemistry",
      summary: true,
    }),
    nominalV: defaulted(nominalVoltage, ({ buildV }) => buildV, { words: "nominal voltage", summary: true }),
    // A whole bank entered as one battery is still below the maximum, and the cell of a torch above the minimum.
    capacityAh: required(amount("a capacity", "Ah", { from: 0.1, upTo: 10_000 }), {
      words: "capacity",
      summary: true,
    }),
    // A bank of more than a few ohms is worn out; one below 10 µΩ would deliver a million amperes at 12 V.
    internalMilliohm: input(amount("a resistance", "mΩ", { from: 0.01, upTo: 10_000 })),
    // No fuse of the families can interrupt more, UL 248-15 (from memory). Less than 1 A means a resistance of many ohms.
    /** As the maker states it, A. Overrides the current that follows from the resistance. */
    shortCircuitA: optional(amount("a current", "A", { from: 1, upTo: 200_000 }), {
      words: "short-circuit current",
    }),
    maxDischargeA: optional(current, {
      words: "discharge limit",
      limitOf: { current: "gives", words: "may give", judgedBy: "battery/discharge-current" },
      silentWithout: "Discharge limit of a battery",
    }),
    maxChargeA: optional(current, {
      words: "charge limit",
      limitOf: { current: "takes", words: "may take", judgedBy: "battery/charge-current" },
      silentWithout: "Charge limit of a battery, except the usual one of its chemistry",
    }),
    lowestC: optional(coldestDay, {
      words: "coldest in its place",
      silentWithout: "Charging a battery of LiFePO4 in the cold",
    }),
    chargeCutOffC: optional(coldestDay, { words: "charging stops below" }),
    /* The balance of energy alone reads these. */
    reservePercent: optional(shareOfCharge, { words: "reserve" }),
    minimumChargePercent: optional(shareOfCharge, { words: "charge at which it stops delivering" }),
    stateOfHealthPercent: optional(ofBalance(amount("a share of its rating", "%", { from: 20, upTo: 100 })), {
      words: "state of health",
    }),
    standbyW: optional(ofBalance(amount("a power", "W", { from: 0, upTo: 1_000 })), {
      words: "constant draw besides the plan",
    }),
  },
  figures(given, { source }): BatteryFigures {
    const { voltageV: fullV, source: fullVSource } = fullVoltageOf(given);
    return {
      systemV: systemVoltageOf(given),
      internal: internalResistanceOf({ ...given, source }, fullV),
      usualRestV: cellVoltageOf(given),
      fullV,
      fullVSource,
    };
  },
  compared: ({ internal }) => [
    { id: "internalMilliohm", words: "internal resistance", value: resistanceInWords(internal) },
  ],
  assumed: ({ internal, shortCircuitA, fullV, fullVSource, maxChargeA, capacityAh, chemistry }) => [
    ...(internal.stated
      ? []
      : [
          {
            words: "internal resistance",
            as: takenResistance(internal, shortCircuitA),
            source: internal.source,
          },
        ]),
    {
      words: "voltage when full, for the maximum fault",
      as: [{ value: fullV, unit: "V", rounded: true }],
      source: fullVSource,
    },
    ...(maxChargeA === undefined
      ? [
          {
            words: "maximum charging current",
            as: [
              { value: usualChargeRates.greatestPerAh[chemistry] * capacityAh, unit: "A", rounded: true },
              `, usual for ${chemistry}`,
            ] as const,
            source: usualChargeRates.source,
          },
        ]
      : []),
  ],
});

export interface BatteryPart extends PartOf<typeof battery> {}

interface BatteryFigures {
  /** Nominal voltage of the system that its cells make, V: 12 V for a label of 12.8 V. */
  readonly systemV: number;
  readonly internal: InternalResistance;
  /** At rest, if a scenario does not state the charge, V. */
  readonly usualRestV: number;
  /** Fully charged, for the maximum fault current, V. */
  readonly fullV: number;
  readonly fullVSource: Citation;
}

function milliohm(ohm: number) {
  return { value: ohm * 1_000, unit: "mΩ", rounded: true } as const;
}

function resistanceInWords({ stated, lowOhm, highOhm }: InternalResistance): ComparedFigure["value"] {
  return stated
    ? milliohm(lowOhm)
    : [{ value: lowOhm * 1_000, unit: "", rounded: true }, " to ", milliohm(highOhm), ", not stated"];
}

function takenResistance({ lowOhm, highOhm }: InternalResistance, shortCircuitA: number | undefined): Phrase {
  return shortCircuitA === undefined
    ? [milliohm(lowOhm), " for the maximum fault, ", milliohm(highOhm), " for the minimum one and in use"]
    : [milliohm(highOhm), " in use; the maximum fault is stated in the plan"];
}
