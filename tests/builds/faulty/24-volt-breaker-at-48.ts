import { battery, breaker, build, cable, circuit, disconnect } from "loomwright";

// A pump cart of 48 V with a main breaker marked for 24 V.
// Expected: error protection/voltage-rating at main breaker
// Because: 33 CFR 183.455(d): the voltage rating is at least that of the circuit.
build({ name: "24 volt breaker at 48", voltage: 48, insulationC: 105 });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const pack = battery({
  name: "pack",
  chemistry: "AGM",
  nominalV: 48,
  capacityAh: 100,
  internalMilliohm: 20,
  maxDischargeA: 200,
});
const main = breaker({
  name: "main breaker",
  ratingA: 80,
  interruptingA: 5000,
  ratedV: 24,
  on: pack.positive,
});
const off = disconnect({ name: "switch", ratedA: 100 });
cable({ name: "plus", from: main.load, to: off.line, lengthFt: 2, gauge: 4 });
circuit({
  name: "heater",
  from: off.load,
  returnTo: pack.negative,
  load: 30,
  oneWayFt: 6,
  gauge: 6,
  protect: classT(40),
});
