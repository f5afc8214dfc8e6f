import { battery, build, cable, circuit, disconnect } from "loomwright";

// A bakery van: two thin wires a side instead of one thick one.
// Expected: info conductor/parallel at oven fan
// Because: NFPA 70, 310.10(G): wires in parallel from 1/0; with one of two 10 AWG wires lost, the other carries the whole current behind one fuse.
build({ name: "thin wires in parallel", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 40,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
const fromSwitch = { from: mainSwitch.load, returnTo: bank.negative } as const;
circuit({
  ...fromSwitch,
  name: "oven fan",
  load: 55,
  oneWayFt: 6,
  gauge: 10,
  parallel: 2,
  protect: { ...classT, ratingA: 70, distanceIn: 5 },
});
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
