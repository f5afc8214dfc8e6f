import { testRule } from "../rule.tester.ts";
import { terminalTemperature } from "./terminal-temperature.ts";

/*
 * Expected: NFPA 70, 110.14(C): a conductor carries at most the ampacity in the column of its coolest terminal. Without a marking
 * in the plan nothing is proved either way, hence information, once a build.
 * 33 CFR 183.425 Table 5: 10 AWG carries 40 A at 75 °C and 60 A at 105 °C; 8 AWG 65 A and 80 A.
 */
const hot = { gauge: 10, insulationC: 105, oneWayFt: 4, continuous: false, protect: 60 };

testRule(terminalTemperature, [
  { name: "the load that 75 °C insulation carries", circuits: [{ ...hot, load: 40 }], finds: "nothing" },
  {
    name: "a little more than that",
    circuits: [{ ...hot, load: 40.1 }],
    finds: [
      {
        on: "gauge",
        message:
          "10 AWG of Heater carries 40.1 A, more than the 40 A of terminals rated 75 °C (NFPA 70 110.14(C)): read the rating off fuse holders, breakers and bus bars, and state it (terminalC).",
        values: { allowedA: 40, others: 0 },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the terminal states its rating: conductor/ampacity judges",
    circuits: [{ ...hot, load: 50, protect: { ratingA: 60, terminalC: 75 } }],
    finds: "nothing",
  },
  {
    name: "insulation of 75 °C",
    circuits: [{ ...hot, insulationC: 75, load: 50 }],
    finds: "nothing",
  },
  {
    name: "too thin by its insulation as well: a repair of that must not bring this",
    circuits: [{ ...hot, load: 70 }],
    finds: [{ on: "gauge", message: "10 AWG of Heater carries 70 A", fixes: "no fix" }],
  },
  {
    name: "once a build, about the greatest excess",
    circuits: [
      { ...hot, name: "Pump", load: 44 },
      { ...hot, name: "Oven", load: 55 },
      { ...hot, name: "Anchor winch", gauge: 8, load: 70 },
    ],
    finds: [
      {
        subject: "the plan",
        record: "Anchor winch",
        on: "gauge",
        message:
          "10 AWG of Oven carries 55 A, more than the 40 A of terminals rated 75 °C, and so do 2 other runs",
        fixes: "no fix",
      },
    ],
  },
]);
