import { alternator, battery, build, cable, circuit, disconnect } from "loomwright";

// A crew boat: a lithium bank alone on the alternator; its protection may cut off under full charge.
// Expected: warning alternator/load-dump at alternator or bank
// Because: Common practice (ISO 16750-2 names the load dump, not read): when the bank cuts off, the alternator's voltage surges; a lead-acid battery or a converter takes it.
build({ name: "load dump", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 200,
  internalMilliohm: 4,
  maxDischargeA: 200,
  maxChargeA: 100,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 200 });
cable({
  name: "bank to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
const engine = alternator({ name: "alternator", ratedA: 70, continuousPercent: 100, outputV: 14.2 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: mainSwitch.load,
  lengthFt: 6,
  gauge: 4,
  protectFarEnd: { ...classT, ratingA: 90, distanceIn: 6 },
});
cable({ name: "alternator minus", from: engine.negative, to: bank.negative, lengthFt: 6, gauge: 4 });
const fromSwitch = { from: mainSwitch.load, returnTo: bank.negative } as const;
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
