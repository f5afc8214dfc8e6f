import { testRule } from "../rule.tester.ts";
import { coldVoltage } from "./cold-voltage.ts";

// By hand: 0.25 % for each of the 40 K from 25 to -15 °C is a factor of 1.1; two modules of 40 V give 88 V.
const roof = "openCircuitPercentPerC: -0.25, lowestC: -15, series: 2";

testRule(coldVoltage, [
  { name: "exactly what the controller bears", plan: planWith(roof, "maxInputV: 88"), finds: "nothing" },
  {
    name: "a tenth of a volt more than it bears",
    plan: planWith(roof, "maxInputV: 87.9"),
    finds: [
      {
        subject: "roof",
        record: "roof",
        on: "series",
        severity: "error",
        message:
          "2 modules in series give 88 V at -15 °C (80 V × 1.1, NFPA 70 690.7(A)), the solar controller tracker accepts at most 87.9 V: put one module in each string.",
        values: { panels: 2, lowestC: -15 },
        fixes: [{ title: "Put one module in each string", kind: "suggestion", gives: { series: 1 } }],
      },
    ],
  },
  {
    name: "as many in series as it bears, not fewer",
    plan: planWith("openCircuitPercentPerC: -0.25, lowestC: -15, series: 4", "maxInputV: 150"),
    finds: [
      {
        on: "series",
        message: "4 modules in series give 176 V at -15 °C",
        fixes: [{ title: "Put 3 modules in series", kind: "suggestion", gives: { series: 3 } }],
      },
    ],
  },
  {
    name: "one panel alone is too much: no number of panels helps",
    plan: planWith("openCircuitPercentPerC: -0.25, lowestC: -15", "maxInputV: 43"),
    finds: [
      {
        on: "openCircuitV",
        message:
          "Gives 44 V at -15 °C (40 V × 1.1, NFPA 70 690.7(A)), the solar controller tracker accepts at most 43 V: use a controller that accepts more, or modules with less voltage.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the table's factor where no coefficient is stated: 1.14 from -6 to -10 °C, just enough",
    plan: planWith("lowestC: -10, series: 2", "maxInputV: 91.2"),
    finds: "nothing",
  },
  {
    name: "the table's factor, not enough",
    plan: planWith("lowestC: -10, series: 2", "maxInputV: 91"),
    finds: [
      {
        on: "series",
        message:
          "2 modules in series give 91.2 V at -10 °C (80 V × 1.14, NFPA 70 Table 690.7(A)), the solar controller tracker accepts at most 91 V",
        fixes: [{ title: "Put one module in each string", kind: "suggestion", gives: { series: 1 } }],
      },
    ],
  },
  {
    name: "a factor of the table",
    plan: planWith("lowestC: -11, series: 2", "maxInputV: 92"),
    finds: [
      {
        on: "series",
        message: "2 modules in series give 92.8 V at -11 °C (80 V × 1.16, NFPA 70 Table 690.7(A))",
        fixes: [{ title: "Put one module in each string", kind: "suggestion", gives: { series: 1 } }],
      },
    ],
  },
  {
    name: "the coldest day of the whole build",
    plan: `build({ lowestC: -10 });\n${planWith("series: 2", "maxInputV: 91.2")}`,
    finds: "nothing",
  },
  {
    name: "the coldest day is not stated: said, as information",
    plan: planWith("series: 2", "maxInputV: 100"),
    finds: [
      {
        record: "roof",
        on: "",
        severity: "info",
        message:
          "Cannot be judged against the solar controller tracker, as cold modules give more than on their label: state lowestC, the coldest day.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "too much even without any cold",
    plan: planWith("series: 2", "maxInputV: 79"),
    finds: [
      {
        on: "series",
        severity: "error",
        message:
          "2 modules in series give 80 V even at 25 °C, the solar controller tracker accepts at most 79 V",
        fixes: [{ title: "Put one module in each string", kind: "suggestion", gives: { series: 1 } }],
      },
    ],
  },
  {
    name: "colder than the table goes",
    plan: planWith("lowestC: -41", "maxInputV: 100"),
    finds: [
      {
        on: "",
        severity: "info",
        message:
          "Cannot be judged at -41 °C: the table ends at -40 °C (NFPA 70 Table 690.7(A)): state openCircuitPercentPerC.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "colder than the table goes, with the maker's coefficient",
    plan: planWith("lowestC: -45, openCircuitPercentPerC: -0.25", "maxInputV: 47"),
    finds: "nothing",
  },
  {
    name: "an array that is wired to no controller",
    plan: 'const roof = solarArray({ openCircuitV: 40, shortCircuitA: 10, maxPowerV: 33, maxPowerA: 9.5, series: 9 }); load({ name: "lamp", currentA: 1 });',
    finds: "nothing",
  },
  {
    name: "through a disconnect and a bus: the controller behind them is judged",
    plan: planWith(roof, "maxInputV: 80", "bus"),
    finds: [
      {
        on: "series",
        message: "2 modules in series give 88 V",
        fixes: [{ title: "Put one module in each string", kind: "suggestion", gives: { series: 1 } }],
      },
    ],
  },
  {
    name: "accepted with a reason",
    plan: planWith(`${roof}, accept: { "solar/cold-voltage": "taken down in winter" }`, "maxInputV: 80"),
    finds: [
      {
        on: "series",
        message: "2 modules in series give 88 V",
        accepted: "taken down in winter",
        fixes: [{ title: "Put one module in each string", kind: "suggestion", gives: { series: 1 } }],
      },
    ],
  },
]);

/** Modules of 40 V that reach a controller directly, or through a disconnect and a bus. */
function planWith(panels: string, controller: string, through: "cable" | "bus" = "cable"): string {
  const wires =
    through === "cable"
      ? 'circuit({ name: "roof cable", from: roof.positive, to: tracker, oneWayM: 6, mm2: 10 });'
      : `const off = disconnect({ ratedA: 63 });
        const bus = busBar({ name: "combiner" });
        cable({ name: "roof to switch", from: roof.positive, to: off.line, lengthM: 4, mm2: 10 });
        cable({ name: "switch to bus", from: off.load, to: bus.stud, lengthM: 1, mm2: 10 });
        cable({ name: "bus to controller", from: bus.stud, to: tracker.solarPositive, lengthM: 1, mm2: 10 });
        cable({ name: "roof return", from: roof.negative, to: tracker.solarNegative, lengthM: 6, mm2: 10 });`;
  return `
    const house = battery({ chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 2 });
    const roof = solarArray({ openCircuitV: 40, shortCircuitA: 10, maxPowerV: 33, maxPowerA: 9.5, ${panels} });
    const tracker = solarController({ outputA: 30, ${controller} });
    ${wires}
    cable({ name: "controller to bank", from: tracker.positive, to: house.positive, lengthM: 2, mm2: 16, protectFarEnd: 50 });
    cable({ name: "controller return", from: tracker.negative, to: house.negative, lengthM: 2, mm2: 16 });`;
}
