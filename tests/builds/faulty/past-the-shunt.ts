import { battery, build, busBar, cable, circuit, disconnect, inverter, shunt } from "loomwright";

// A narrowboat: the inverter returns straight to the battery, past the meter.
// Expected: warning shunt/bypassed at inverter supply
// Because: Common practice: every load returns on the system side of the shunt, or its state of charge is wrong.
build({ name: "past the shunt", voltage: 12, insulationC: 105 });

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
const meter = shunt({ name: "meter", ratedA: 150 });
const minusBus = busBar({ name: "minus bus", side: "negative", ratedA: 150 });
cable({ name: "battery to meter", from: bank.negative, to: meter.batterySide, lengthFt: 1, gauge: 2 });
cable({ name: "meter to bus", from: meter.systemSide, to: minusBus.stud, lengthFt: 1, gauge: 2 });
const small = inverter({ name: "inverter", continuousW: 500, cutOffV: 10.5 });
circuit({
  name: "inverter supply",
  from: mainSwitch.load,
  returnTo: bank.negative,
  to: small,
  oneWayFt: 4,
  gauge: 4,
  protect: { ...classT, ratingA: 80, distanceIn: 5 },
});
circuit({
  name: "lamps",
  from: mainSwitch.load,
  returnTo: minusBus.stud,
  load: 3,
  oneWayFt: 9,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
