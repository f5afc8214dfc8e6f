import { coldVoltageFactors } from "../../standards/solar-factors.ts";
import { coldestDay } from "../part-properties.ts";
import { amount, count, ofBalance } from "../property.ts";
import { byDirection, byMonth } from "../use-properties.ts";
import { notAbove } from "./contradiction.ts";
import { definePart, type PartOf } from "./define-part.ts";
import { defaulted, optional, required } from "./part-property.ts";
import { feeds, poles } from "./poles.ts";

/** For one panel, or a whole array entered as one. */
const panelVoltage = amount("a voltage", "V", { above: 0, upTo: 500 });
const panelCurrent = amount("a current", "A", { above: 0, upTo: 100 });
const fuse = amount("a rating", "A", { above: 0, upTo: 1_000 });

/** Data of one module at standard test conditions, and the number of modules. */
export const solarArray = definePart("solarArray", {
  called: { word: "solar array", saidBy: /array|solar|panel/i },
  role: "source",
  chargesWith: "sun",
  terminals: poles,
  ports: feeds,
  formsStrings: true,
  hasDataSheet: true,
  properties: {
    openCircuitV: required(panelVoltage, { words: "open-circuit voltage", details: "open circuit each" }),
    shortCircuitA: required(panelCurrent, { words: "short-circuit current", details: "short circuit each" }),
    maxPowerV: required(panelVoltage, { words: "voltage at maximum power" }),
    maxPowerA: required(panelCurrent, { words: "current at maximum power" }),
    // Silicon and thin film lie between -0.24 and -0.35 (from memory); 0.3 without the minus sign is a slip.
    /** Percent of the open-circuit voltage for each kelvin; undefined: the table for crystalline silicon applies. */
    openCircuitPercentPerC: optional(amount("a change", "% per °C", { from: -2, upTo: 0 }), {
      words: "change of the open-circuit voltage",
    }),
    lowestC: optional(coldestDay, {
      words: "lowest temperature",
      taken: ({ build }) => build.lowestC,
      silentWithout: "Voltage of a solar array on the coldest day: the lowest temperature is not stated",
    }),
    series: defaulted(count({ from: 1, upTo: 50 }), 1, { words: "modules in series" }),
    parallel: defaulted(count({ from: 1, upTo: 50 }), 1, { words: "strings in parallel" }),
    /** Maximum fuse rating that the maker allows in series with a panel, A. */
    maxSeriesFuseA: optional(fuse, { words: "maximum series fuse" }),
    /** Rating of the fuse in each string, A. */
    stringFuseA: optional(fuse, { words: "fuse in each string" }),
    /* The balance of energy alone reads these. */
    tiltDeg: optional(ofBalance(amount("a tilt", "°", { from: 0, upTo: 90 })), { words: "tilt" }),
    facingDeg: optional(ofBalance(amount("a compass direction", "°", { from: 0, upTo: 360 })), {
      words: "direction",
    }),
    shadePercentByMonth: optional(byMonth("each a share of the light", "%", 100)),
    horizonDegByDirection: optional(byDirection("each an angle", "°", 90)),
  },
  // The conductors to the controller are designed for the maximum-power voltage of the modules.
  determinesV: ({ maxPowerV, series = 1 }) => maxPowerV && maxPowerV * series,
  contradictions: ({ openCircuitV = 0, shortCircuitA = 0, maxPowerV, maxPowerA }) => [
    ...notAbove("maxPowerV", maxPowerV, { what: "the open-circuit voltage", value: openCircuitV, unit: "V" }),
    ...notAbove("maxPowerA", maxPowerA, {
      what: "the short-circuit current",
      value: shortCircuitA,
      unit: "A",
    }),
  ],
  compared: ({ shadePercentByMonth, horizonDegByDirection }) => [
    ...(shadePercentByMonth === undefined
      ? []
      : [
          {
            id: "shadePercentByMonth",
            words: "shade from January to December",
            value: [`${shadePercentByMonth.join(", ")} %`],
          },
        ]),
    ...(horizonDegByDirection === undefined
      ? []
      : [
          {
            id: "horizonDegByDirection",
            words: "horizon from north clockwise",
            value: [`${horizonDegByDirection.join(", ")}°`],
          },
        ]),
  ],
  summary({ series, parallel, maxPowerV, maxPowerA }) {
    const modules = series * parallel;
    const each = { value: maxPowerV * maxPowerA, unit: "W", rounded: true } as const;
    if (modules === 1) return [[each]];
    if (parallel === 1) return [[`${modules} × `, each, " in series"]];
    if (series === 1) return [[`${modules} × `, each, " in parallel"]];
    return [[`${modules} × `, each], [`${series} in series`], [`${parallel} in parallel`]];
  },
  assumed: ({ openCircuitPercentPerC, lowestC }) =>
    openCircuitPercentPerC === undefined && lowestC !== undefined
      ? [
          {
            words: "rise of its voltage in the cold",
            as: ["that of crystalline silicon"],
            source: coldVoltageFactors.source,
          },
        ]
      : [],
});

export interface SolarArrayPart extends PartOf<typeof solarArray> {}
