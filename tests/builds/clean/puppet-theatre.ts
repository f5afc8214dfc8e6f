import { battery, build, busBar, cable, circuit, disconnect, inverter } from "loomwright";

// A puppet theatre on a trailer: 12 V, a small inverter for the sound desk, lamps with breakers.
build({ name: "puppet theatre", voltage: 12, insulationC: 105 });

const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 120,
  internalMilliohm: 4,
  maxDischargeA: 400,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
const plusBus = busBar({ name: "plus bus", side: "positive", ratedA: 150, studs: 4 });
const minusBus = busBar({ name: "minus bus", side: "negative", ratedA: 150, studs: 4 });
const breakerOf = (ratingA: number) =>
  ({ ratingA, family: "circuit breaker", interruptingA: 5000, ratedV: 48, distanceIn: 5 }) as const;
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 2,
  protect: breakerOf(125),
});
cable({ name: "switch to bus", from: mainSwitch.load, to: plusBus.stud, lengthFt: 1, gauge: 2 });
cable({ name: "minus cable", from: bank.negative, to: minusBus.stud, lengthFt: 2, gauge: 2 });

const fromBus = { from: plusBus.stud, returnTo: minusBus.stud } as const;
const desk = inverter({
  name: "sound inverter",
  continuousW: 600,
  surgeW: 1000,
  efficiencyPercent: 90,
  cutOffV: 10.5,
  idleW: 6,
});
circuit({ ...fromBus, name: "inverter supply", to: desk, oneWayFt: 4, gauge: 4, protect: breakerOf(80) });
circuit({ ...fromBus, name: "stage lamps", load: 12, oneWayFt: 16, gauge: 10, protect: breakerOf(15) });
circuit({ ...fromBus, name: "house lamps", load: 3, oneWayFt: 20, gauge: 14, protect: breakerOf(5) });
