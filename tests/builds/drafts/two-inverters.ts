import { battery, build, busBar, cable, circuit, disconnect, inverter } from "loomwright";

// Two inverters on one bus; the big one got the thin cable.
build({ name: "two inverters", voltage: 12, insulationC: 90 });

const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 400,
  maxDischargeA: 400,
  internalMilliohm: 1,
});
const off = disconnect({ name: "switch", ratedA: 350 });
const plus = busBar({ name: "plus", ratedA: 400 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 400 });
cable({
  name: "bank to switch",
  from: bank.positive,
  to: off.line,
  lengthFt: 2,
  gauge: "1/0",
  protect: { ratingA: 400, family: "UL 248-15 Class T", interruptingA: 20_000, distanceIn: 5 },
});
cable({ name: "switch to bus", from: off.load, to: plus.stud, lengthFt: 2, gauge: "1/0" });
cable({ name: "minus to bank", from: minus.stud, to: bank.negative, lengthFt: 4, gauge: "1/0" });
const big = inverter({ name: "big inverter", continuousW: 2000 });
const small = inverter({ name: "small inverter", continuousW: 400 });
circuit({
  name: "big leads",
  from: plus.stud,
  returnTo: minus.stud,
  to: big,
  oneWayFt: 5,
  gauge: 4,
  protect: 100,
});
circuit({
  name: "small leads",
  from: plus.stud,
  returnTo: minus.stud,
  to: small,
  oneWayFt: 12,
  gauge: 8,
  protect: 200,
});
