import { battery, build, cable, circuit, disconnect, part } from "loomwright";

// A mobile saw: a contactor of one's own, made for 40 A, in the saw's 70 A supply.
// Expected: error part/rating at contactor
// Because: Nameplate: 70 A through contacts rated 40 A.
build({ name: "contactor too small", voltage: 12, insulationC: 105 });

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
const contactor = part({
  name: "contactor",
  terminals: ["in", "out"],
  joins: [{ between: ["in", "out"], milliohm: 0.3 }],
  ratedA: 40,
});
cable({
  name: "to the contactor",
  from: mainSwitch.load,
  to: contactor.in,
  lengthFt: 1,
  gauge: 4,
  protect: { ...classT, ratingA: 100, distanceIn: 5 },
});
circuit({ name: "saw", from: contactor.out, returnTo: bank.negative, load: 70, oneWayFt: 4, gauge: 4 });
