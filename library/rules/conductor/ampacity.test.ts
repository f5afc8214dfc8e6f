import { testRule } from "../rule.tester.ts";
import { ampacity } from "./ampacity.ts";

// Limits by 33 CFR 183.425 Table 5: 12 AWG carries 25 A at 75 °C, 45 A at 105 °C; note 1 leaves 0.85 of that in an engine space,
// note 2 leaves 0.6 of it for four conductors together. Metric limits are from memory and are no reference: those rows only show
// that the table is used and called unconfirmed.
testRule(ampacity, [
  {
    name: "exactly what the table allows",
    circuits: [{ gauge: 12, load: 25, oneWayFt: 5 }],
    finds: "nothing",
  },
  {
    name: "a little more than the table allows, and the text shows by how much",
    circuits: [{ gauge: 12, load: 25.004, oneWayFt: 5, protect: 35 }],
    finds: [
      {
        subject: "Heater",
        on: "gauge",
        message:
          "12 AWG may carry 25 A (75 °C, 33 CFR 183.425(b), Table 5), the load draws 25.004 A: use 10 AWG.",
        values: { ampacityA: 25, loadA: 25.004, columnC: 75 },
        fixes: [{ title: "Use 10 AWG", gives: { gauge: 10, protect: 35 } }],
      },
    ],
  },
  {
    name: "much more than the table allows",
    circuits: [{ gauge: 12 }],
    finds: [
      {
        on: "gauge",
        message: "12 AWG may carry 25 A (75 °C, 33 CFR 183.425(b), Table 5), the load draws 40 A: use 8 AWG.",
        fixes: [{ title: "Use 8 AWG", gives: { gauge: 8, protect: 50 } }],
      },
    ],
  },
  {
    name: "hotter insulation carries more",
    circuits: [{ gauge: 12, load: 45, insulationC: 105, oneWayFt: 5 }],
    finds: "nothing",
  },
  {
    name: "insulation between two columns is judged by the cooler one",
    circuits: [{ gauge: 12, load: 36, insulationC: 85, oneWayFt: 5, protect: 45 }],
    finds: [
      {
        on: "gauge",
        message: "12 AWG may carry 35 A (80 °C, 33 CFR 183.425(b), Table 5), the load draws 36 A",
        fixes: [{ title: "Use 10 AWG", gives: { gauge: 10 } }],
      },
    ],
  },
  {
    name: "exactly what an engine space leaves: 45 A × 0.85",
    circuits: [{ gauge: 12, load: 38.25, insulationC: 105, engineSpace: true, oneWayFt: 5 }],
    finds: "nothing",
  },
  {
    name: "just more than an engine space leaves",
    circuits: [{ gauge: 12, load: 38.26, insulationC: 105, engineSpace: true, oneWayFt: 5, protect: 40 }],
    finds: [
      {
        on: "gauge",
        message: "12 AWG may carry 38.25 A in an engine space (105 °C, 33 CFR 183.425(b), Table 5)",
        values: { factors: ["engine-space"] },
        fixes: [{ title: "Use 10 AWG with a 50 A fuse", gives: { gauge: 10, protect: 50 } }],
      },
    ],
  },
  {
    name: "exactly what a bundle of four leaves: 25 A × 0.6",
    circuits: [{ gauge: 12, load: 15, bundledWith: 3, oneWayFt: 5 }],
    finds: "nothing",
  },
  {
    name: "just more than a bundle of four leaves",
    circuits: [{ gauge: 12, load: 15.1, bundledWith: 3, oneWayFt: 5, protect: 20 }],
    finds: [
      {
        on: "gauge",
        message: "12 AWG may carry 15 A in this bundle",
        fixes: [{ title: "Use 10 AWG", gives: { gauge: 10, protect: 20 } }],
      },
    ],
  },
  {
    name: "a warm place leaves less",
    circuits: [{ gauge: 10, load: 35, ambientC: 50, oneWayFt: 5, protect: 40 }],
    finds: [
      {
        on: "gauge",
        message: "10 AWG may carry 29.8 A in this ambient (75 °C, 33 CFR 183.425(b), Table 5)",
        // A fuse in a place of 50 °C carries 70 % of its rating: 35 A / 0.70.
        fixes: [{ title: "Use 6 AWG with a 50 A fuse", gives: { gauge: 6 } }],
      },
    ],
  },
  {
    name: "two wires side by side carry twice what is left of one: 2 × 25 A × 0.6",
    circuits: [{ gauge: 12, load: 30, parallel: 2, oneWayFt: 5, protect: 30 }],
    finds: "nothing",
  },
  {
    name: "two wires side by side, a little too thin",
    circuits: [{ gauge: 12, load: 30.1, parallel: 2, oneWayFt: 5, protect: 40 }],
    finds: [
      {
        on: "gauge",
        message: "2 × 12 AWG may carry 30 A in this bundle",
        fixes: [{ title: "Use 2 × 10 AWG", gives: { gauge: 10, parallel: 2 } }],
      },
    ],
  },
  {
    name: "the fuse grows with the conductor where no rating fits otherwise",
    circuits: [{ gauge: 8, load: 70, insulationC: 105, engineSpace: true, oneWayFt: 5, protect: 60 }],
    finds: [
      {
        on: "gauge",
        message: "8 AWG may carry 68 A in an engine space",
        fixes: [{ title: "Use 6 AWG with a 90 A fuse", gives: { gauge: 6, protect: 90 } }],
      },
    ],
  },
  {
    name: "the fuse written as an object keeps its form and its family",
    circuits: [
      {
        gauge: 8,
        load: 70,
        oneWayFt: 5,
        protect: { ratingA: 60, family: "ISO 8820-5 Type SF 30", distanceIn: 5 },
      },
    ],
    finds: [
      {
        on: "gauge",
        message: "8 AWG may carry 65 A",
        fixes: [
          {
            title: "Use 4 AWG with a 100 A fuse",
            gives: {
              gauge: 4,
              protect: { ratingA: 100, family: "ISO 8820-5 Type SF 30", distanceIn: 5 },
            },
          },
        ],
      },
    ],
  },
  {
    name: "a metric conductor within its table",
    circuits: [{ gauge: undefined, mm2: 10, oneWayFt: 5 }],
    finds: "nothing",
  },
  {
    name: "a metric conductor in an engine space, where the ambient equation takes more than the space's own factor",
    circuits: [
      {
        gauge: undefined,
        mm2: 10,
        load: 40,
        oneWayFt: undefined,
        oneWayM: 1.5,
        engineSpace: true,
        protect: 50,
      },
    ],
    finds: [
      {
        on: "mm2",
        message:
          "10 mm² may carry 32.5 A in an engine space (70 °C, ISO 10133:2012 Annex A, unconfirmed figure), the load draws 40 A",
        fixes: [{ title: "Use 25 mm²", gives: { mm2: 25 } }],
      },
    ],
  },
  {
    name: "a metric conductor beyond its table, which nobody has confirmed",
    circuits: [{ gauge: undefined, mm2: 2.5, load: 30, oneWayFt: undefined, oneWayM: 1.5, protect: 40 }],
    finds: [
      {
        on: "mm2",
        message:
          "2.5 mm² may carry 25 A (70 °C, ISO 10133:2012 Annex A, unconfirmed figure), the load draws 30 A",
        fixes: [{ title: "Use 6 mm²", gives: { mm2: 6 } }],
      },
    ],
  },
  {
    name: "more than the thickest size carries",
    circuits: [{ gauge: "4/0", load: 400, oneWayFt: 3, protect: 500 }],
    finds: [
      {
        on: "gauge",
        message:
          "4/0 AWG may carry 360 A (75 °C, 33 CFR 183.425(b), Table 5), the load draws 400 A: no standard size is enough",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "watts are turned into amperes at the device's least voltage: 250 W / 10 V",
    circuits: [{ gauge: 12, load: undefined, loadW: 250, minimumV: 10, oneWayFt: 5 }],
    finds: "nothing",
  },
  {
    name: "a few watts more",
    circuits: [{ gauge: 12, load: undefined, loadW: 251, minimumV: 10, oneWayFt: 5 }],
    finds: [
      {
        on: "gauge",
        message: "12 AWG may carry 25 A (75 °C, 33 CFR 183.425(b), Table 5), the load draws 25.1 A",
        fixes: [{ title: "Use 10 AWG with a 40 A fuse", gives: { gauge: 10, protect: 40 } }],
      },
    ],
  },
  {
    name: "accepted with a reason",
    circuits: [{ gauge: 12, load: 30, oneWayFt: 5, accept: { "conductor/ampacity": "runs for seconds" } }],
    finds: [
      {
        on: "gauge",
        message: "12 AWG may carry 25 A",
        accepted: "runs for seconds",
        fixes: [{ title: "Use 10 AWG with a 40 A fuse", gives: { gauge: 10, protect: 40 } }],
      },
    ],
  },
  {
    name: "a place that is too hot is left to its own rule",
    circuits: [{ ambientC: 80 }],
    finds: "nothing",
  },
  // NFPA 70, 110.14(C): 10 AWG of 105 °C carries 60 A by its insulation, 40 A at terminals of 75 °C.
  {
    name: "exactly what a terminal of 75 °C allows",
    circuits: [
      { gauge: 10, load: 40, insulationC: 105, oneWayFt: 5, protect: { ratingA: 40, terminalC: 75 } },
    ],
    finds: "nothing",
  },
  {
    name: "more than the terminal of its fuse allows, and less than its insulation does",
    circuits: [
      {
        gauge: 10,
        load: 60,
        insulationC: 105,
        continuous: false,
        oneWayFt: 5,
        protect: { ratingA: 60, terminalC: 75 },
      },
    ],
    finds: [
      {
        on: "gauge",
        message:
          "10 AWG may carry 40 A (75 °C terminals of its fuse or breaker, NFPA 70 110.14(C); 33 CFR 183.425(b), Table 5), the load draws 60 A: use 8 AWG.",
        values: { ampacityA: 40, atTerminal: true },
        fixes: [{ title: "Use 8 AWG", gives: { gauge: 8 } }],
      },
    ],
  },
  {
    name: "at the terminals of a part where it ends",
    plan: `
      build({ insulationC: 105 });
      const house = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 3 });
      const main = disconnect({ ratedA: 100, terminalC: 75 });
      cable({ name: "feed", from: house.positive, to: main.line, lengthFt: 2, gauge: 10, protect: 60 });
      circuit({ from: main.load, returnTo: house.negative, load: 45, oneWayFt: 4, gauge: 4 });`,
    finds: [
      {
        subject: "feed",
        on: "gauge",
        message: "10 AWG may carry 40 A (75 °C terminals of main, NFPA 70 110.14(C);",
        fixes: [{ title: "Use 8 AWG", gives: { gauge: 8 } }],
      },
    ],
  },
  {
    name: "at the same terminals without a stated rating",
    plan: `
      build({ insulationC: 105 });
      const house = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 3 });
      const main = disconnect({ ratedA: 100 });
      cable({ name: "feed", from: house.positive, to: main.line, lengthFt: 2, gauge: 10, protect: 60 });
      circuit({ from: main.load, returnTo: house.negative, load: 45, oneWayFt: 4, gauge: 4 });`,
    finds: "nothing",
  },
]);
