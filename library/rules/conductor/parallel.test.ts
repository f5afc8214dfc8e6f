import { testRule } from "../rule.tester.ts";
import { conductorParallel } from "./parallel.ts";

/*
 * Expected: information. NFPA 70, 310.10(G): conductors in parallel are 1/0 AWG or larger. N − 1 is common practice.
 * 33 CFR 183.425 Table 5, 75 °C: 2/0 AWG carries 265 A, 4 AWG 125 A; no bundling factor below three together.
 */
const two = { parallel: 2, gauge: "2/0", oneWayFt: 4, bundledWith: 1 };

testRule(conductorParallel, [
  { name: "one wire", circuits: [{}], finds: "nothing" },
  {
    name: "two wires, each of which carries all, behind a device for one of them",
    circuits: [{ ...two, load: 200, protect: 250 }],
    finds: "nothing",
  },
  {
    name: "two wires behind a device for both",
    circuits: [{ ...two, load: 200, protect: 300 }],
    finds: [
      {
        subject: "Heater",
        on: "parallel",
        message:
          "2 × 2/0 AWG of Heater: with one wire lost it may carry 265 A, and its device lets 300 A through: use one thicker wire, or a device for each wire.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "two wires for a load that one does not carry",
    circuits: [{ ...two, load: 300, protect: 400 }],
    finds: [
      {
        on: "parallel",
        message: "2 × 2/0 AWG of Heater: with one wire lost it may carry 265 A, and the load is 300 A",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "two thin wires, each of which carries all",
    circuits: [{ parallel: 2, gauge: 4, bundledWith: 1 }],
    finds: [
      {
        on: "parallel",
        message:
          "2 × 4 AWG of Heater: wires below 1/0 AWG are not put in parallel (NFPA 70 310.10(G), 310.10(H) before 2020): use one thicker wire.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "once a build",
    circuits: [
      { ...two, name: "Winch", load: 200, protect: 300 },
      { ...two, name: "Thruster", load: 320, protect: 400 },
    ],
    finds: [
      {
        record: "Winch",
        on: "parallel",
        message:
          "2 × 2/0 AWG of Thruster: with one wire lost it may carry 265 A, and the load is 320 A, and another run likewise",
        fixes: "no fix",
      },
    ],
  },
]);
