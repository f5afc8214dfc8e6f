import { battery, build, cable, circuit, disconnect, shunt } from "loomwright";

// A campervan: a 50 A shunt in the return of an 80 A system.
// Expected: error part/rating at meter
// Because: Nameplate: 75 A through a shunt made for 50 A.
build({ name: "shunt too small", voltage: 12, insulationC: 105 });

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
const meter = shunt({ name: "meter", ratedA: 50 });
cable({ name: "battery to meter", from: bank.negative, to: meter.batterySide, lengthFt: 1, gauge: 2 });
circuit({
  name: "air conditioner",
  from: mainSwitch.load,
  returnTo: meter.systemSide,
  load: 75,
  oneWayFt: 4,
  gauge: 4,
  protect: { ...classT, ratingA: 100, distanceIn: 5 },
});
