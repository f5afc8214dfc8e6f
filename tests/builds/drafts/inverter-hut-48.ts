import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  inverter,
  solarArray,
  solarController,
} from "loomwright";

// A hut of 48 V with a 3 kW inverter on 10 AWG.
build({ name: "hut of 48 V", voltage: 48, insulationC: 90 });

const pack = battery({
  name: "pack",
  chemistry: "LiFePO4",
  nominalV: 51.2,
  capacityAh: 100,
  internalMilliohm: 15,
  maxDischargeA: 100,
});
const off = disconnect({ name: "breaker switch", ratedA: 125 });
const plus = busBar({ name: "plus", ratedA: 200 });
const minus = busBar({ name: "minus", side: "negative", ratedA: 200 });
cable({
  name: "pack plus",
  from: pack.positive,
  to: off.line,
  lengthFt: 3,
  gauge: 6,
  protect: { ratingA: 100, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 6 },
});
cable({ name: "switch to bus", from: off.load, to: plus.stud, lengthFt: 2, gauge: 8 });
cable({ name: "pack minus", from: minus.stud, to: pack.negative, lengthFt: 4, gauge: 8 });
const mains = inverter({ name: "inverter", continuousW: 3000 });
circuit({
  name: "inverter leads",
  from: plus.stud,
  returnTo: minus.stud,
  to: mains,
  oneWayFt: 6,
  gauge: 10,
  protect: { ratingA: 60, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 },
});
const roof = solarArray({
  name: "array",
  openCircuitV: 45,
  shortCircuitA: 10,
  maxPowerV: 37,
  maxPowerA: 9.4,
  series: 2,
  parallel: 2,
});
const sun = solarController({ name: "controller", maxInputV: 150, outputA: 30 });
circuit({ name: "array cable", from: roof.positive, to: sun, oneWayFt: 60, gauge: 12 });
cable({
  name: "controller plus",
  from: sun.positive,
  to: plus.stud,
  lengthFt: 5,
  gauge: 12,
  protectFarEnd: { ratingA: 30, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 },
});
cable({ name: "controller minus", from: sun.negative, to: minus.stud, lengthFt: 5, gauge: 12 });
