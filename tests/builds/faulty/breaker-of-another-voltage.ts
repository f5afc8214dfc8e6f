import { battery, build, cable, circuit, disconnect } from "loomwright";

// A 48 V forklift cabin: a breaker marked 32 V.
// Expected: error protection/voltage-rating at cabin heater
// Because: 33 CFR 183.455(d): the voltage rating is at least that of the circuit; 32 V against 48 V.
build({ name: "forklift", voltage: 48, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const pack = battery({
  name: "pack",
  chemistry: "AGM",
  nominalV: 48,
  capacityAh: 100,
  internalMilliohm: 20,
  maxDischargeA: 300,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 100 });
cable({
  name: "pack to switch",
  from: pack.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 4,
  protect: { ...classT, ratingA: 80, distanceIn: 6 },
});
circuit({
  name: "cabin heater",
  from: mainSwitch.load,
  returnTo: pack.negative,
  load: 15,
  oneWayFt: 6,
  gauge: 10,
  protect: { ratingA: 25, family: "circuit breaker", interruptingA: 5000, ratedV: 32, distanceIn: 5 },
});
