import { testRule } from "../rule.tester.ts";
import { minimumSize } from "./minimum-size.ts";

// 33 CFR 183.425(d), (e): 18 AWG in a sheath, 16 AWG on its own. ISO 10133:2012, 7.7: 0.75 mm² in a sheath, 1 mm² on its
// own, for conductors of more than 200 mm.
const lamp = { name: "Lamp", load: 2, oneWayFt: 6, protect: 3 };
const metricLamp = { ...lamp, gauge: undefined, oneWayFt: undefined };

testRule(minimumSize, [
  {
    name: "the thinnest wire that may run on its own",
    circuits: [{ ...lamp, gauge: 16 }],
    finds: "nothing",
  },
  {
    name: "thinner, on its own",
    circuits: [{ ...lamp, gauge: 18 }],
    finds: [
      {
        subject: "Lamp",
        on: "gauge",
        message:
          "18 AWG is below the minimum for a wire on its own, 16 AWG (33 CFR 183.425(e)): use 16 AWG, or run it in a sheath",
        fixes: [{ title: "Use 16 AWG", gives: { gauge: 16 } }],
      },
    ],
  },
  {
    name: "the same wire in a sheath",
    circuits: [{ ...lamp, gauge: 18, sheathed: true }],
    finds: "nothing",
  },
  {
    name: "the thinnest metric wire that may run on its own",
    circuits: [{ ...metricLamp, mm2: 1, oneWayM: 2 }],
    finds: "nothing",
  },
  {
    name: "a thinner metric wire, on its own",
    circuits: [{ ...metricLamp, mm2: 0.75, oneWayM: 2 }],
    finds: [
      {
        on: "mm2",
        message:
          "0.75 mm² is below the minimum for a wire on its own, 1 mm² (ISO 10133:2012, 7.7): use 1 mm²",
        fixes: [{ title: "Use 1 mm²", gives: { mm2: 1 } }],
      },
    ],
  },
  {
    name: "a thinner metric wire in a sheath",
    circuits: [{ ...metricLamp, mm2: 0.75, oneWayM: 2, sheathed: true }],
    finds: "nothing",
  },
  {
    name: "a thinner metric wire of 200 mm",
    circuits: [{ ...metricLamp, mm2: 0.75, oneWayM: 0.2 }],
    finds: "nothing",
  },
  {
    name: "a thinner metric wire just over 200 mm",
    circuits: [{ ...metricLamp, mm2: 0.75, oneWayM: 0.21 }],
    finds: [
      {
        on: "mm2",
        message: "0.75 mm² is below the minimum",
        fixes: [{ title: "Use 1 mm²", gives: { mm2: 1 } }],
      },
    ],
  },
  {
    name: "too thin for its load as well: one fix for both",
    circuits: [{ ...lamp, gauge: 18, load: 20, protect: 25 }],
    finds: [
      {
        on: "gauge",
        message: "18 AWG is below the minimum for a wire on its own, 16 AWG (33 CFR 183.425(e)): use 12 AWG",
        fixes: [{ title: "Use 12 AWG", gives: { gauge: 12, protect: 25 } }],
      },
    ],
  },
  {
    name: "no size would be enough for the load: the least that this rule asks for",
    circuits: [{ ...lamp, gauge: 18, load: 700 }],
    finds: [
      {
        on: "gauge",
        message: "18 AWG is below the minimum",
        fixes: [{ title: "Use 16 AWG", kind: "suggestion", gives: { gauge: 16 } }],
      },
    ],
  },
]);
