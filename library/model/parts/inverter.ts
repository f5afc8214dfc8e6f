import { cutOffVoltage, inverterEfficiency, surgeDuration } from "../../standards/device-practice.ts";
import { efficiency, power, workingVoltage } from "../part-properties.ts";
import { amount } from "../property.ts";
import { useInWords } from "../use-in-words.ts";
import { acDevices, hoursOn } from "../use-properties.ts";
import { chargedWith, comparedDropLimit, cutOffV, supplyDropLimit } from "./charging.ts";
import { comparedUse, maximumVoltage } from "./consumer.ts";
import { type Bound, notAbove, notBelow, notBelowMinimum } from "./contradiction.ts";
import { type ComparedFigure, definePart, type PartOf } from "./define-part.ts";
import { defaulted, optional, required } from "./part-property.ts";
import { permittedFuse } from "./permitted-fuse.ts";
import { draws, poles } from "./poles.ts";

export const inverter = definePart("inverter", {
  called: { word: "inverter", saidBy: /inverter/i },
  role: "consumer",
  terminals: poles,
  ports: draws,
  hasDataSheet: true,
  properties: {
    continuousW: required(power, { words: "continuous power", summary: true }),
    surgeW: optional(amount("a power", "W", { above: 0, upTo: 200_000 }), {
      words: "surge power",
      details: "surge",
    }),
    /** Load connected to it in use, W; unless stated, all its devices together, or its continuous power. */
    loadW: defaulted(
      amount("a power", "W", { from: 0, upTo: 100_000 }),
      ({ amount, stated }) => inUse(amount("continuousW"), stated("devices")),
      {
        words: "power in use",
        assumed: { behind: ", its continuous power or that of its devices" },
      },
    ),
    idleW: defaulted(amount("a power", "W", { from: 0, upTo: 10_000 }), 0, {
      words: "idle power",
      assumed: {},
    }),
    efficiencyPercent: defaulted(efficiency, inverterEfficiency.percent, {
      words: "efficiency",
      source: inverterEfficiency.source,
    }),
    cutOffV: defaulted(workingVoltage, ({ nominalV }) => cutOffV(nominalV()), {
      words: "voltage at which it switches off",
      source: cutOffVoltage.source,
    }),
    maximumV: maximumVoltage,
    /** The devices for alternating current behind it. */
    devices: optional(acDevices),
    /** When it is on; the balance of energy alone reads it. */
    use: optional(hoursOn),
    ...permittedFuse,
  },
  worksFrom: "cutOffV",
  worksUpTo: "maximumV",
  figures: ({ cutOffV }, { build, lowestV, taken }) => ({
    ...supplyDropLimit(build),
    lowestV: taken.includes("cutOffV") ? lowestV() : cutOffV,
  }),
  contradictions({ continuousW = 0, surgeW, loadW, cutOffV, maximumV }) {
    const continuous: Bound = { what: "its continuous power", value: continuousW, unit: "W" };
    return [
      ...notBelow("surgeW", surgeW, continuous),
      ...notAbove("loadW", loadW, continuous),
      ...notBelowMinimum("maximumV", maximumV, cutOffV),
    ];
  },
  voltagesTooHigh: ({ cutOffV }, nominalV) =>
    notAbove("cutOffV", cutOffV, chargedWith("the charging voltage of its system", nominalV())),
  compared: (part) => [
    comparedDropLimit(part),
    ...comparedUse(part.use),
    ...(part.devices ?? []).flatMap(({ name = "", powerW = 0, use }): readonly ComparedFigure[] => [
      {
        id: `device ${name}`,
        words: name,
        value: [{ value: powerW, unit: "W" }, use ? `, ${useInWords(use)}` : ""],
      },
    ]),
  ],
  assumed: ({ surgeW }) =>
    surgeW === undefined
      ? []
      : [
          {
            words: "how long its surge lasts",
            as: [`${surgeDuration.seconds} s`],
            source: surgeDuration.source,
          },
        ],
});

export interface InverterPart extends PartOf<typeof inverter> {}

type AcDevices = (typeof acDevices)["schema"]["_output"];

/** All its devices at the same time, W, as far as it can feed them. */
function inUse(continuousW: number, devices: unknown): number {
  const powers = (devices as AcDevices | undefined)?.map(({ powerW = 0 }) => powerW) ?? [];
  if (powers.length === 0) return continuousW;
  return Math.min(
    continuousW,
    powers.reduce((sum, powerW) => sum + powerW, 0),
  );
}
