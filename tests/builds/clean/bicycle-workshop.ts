import { battery, build, busBar, cable, circuit, disconnect, solarArray, solarController } from "loomwright";

// A bicycle workshop on wheels: 24 V lithium, three strings of modules with a fuse each, compressor and lamps.
build({ name: "bicycle workshop", voltage: 24, insulationC: 90, lowestC: -5 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 100,
  internalMilliohm: 10,
  maxDischargeA: 100,
  maxChargeA: 60,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 100 });
const plusBus = busBar({ name: "plus bus", side: "positive", ratedA: 100, studs: 5 });
const minusBus = busBar({ name: "minus bus", side: "negative", ratedA: 100, studs: 5 });
cable({
  name: "bank to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthM: 0.5,
  mm2: 25,
  protect: { ...classT, ratingA: 80, distanceMm: 140 },
});
cable({ name: "switch to bus", from: mainSwitch.load, to: plusBus.stud, lengthM: 0.4, mm2: 25 });
cable({ name: "bank minus", from: bank.negative, to: minusBus.stud, lengthM: 0.6, mm2: 25 });

const roof = solarArray({
  name: "roof",
  openCircuitV: 41,
  shortCircuitA: 6,
  maxPowerV: 34,
  maxPowerA: 5.6,
  openCircuitPercentPerC: -0.3,
  series: 1,
  parallel: 3,
  maxSeriesFuseA: 15,
  stringFuseA: 10,
});
const sun = solarController({ name: "sun controller", maxInputV: 100, outputA: 30, outputV: 28.4 });
circuit({ name: "roof to controller", from: roof.positive, to: sun, oneWayM: 5, mm2: 10 });
cable({
  name: "sun plus",
  from: sun.positive,
  to: plusBus.stud,
  lengthM: 1,
  mm2: 10,
  protectFarEnd: { ...classT, ratingA: 40, distanceMm: 120 },
});
cable({ name: "sun minus", from: sun.negative, to: minusBus.stud, lengthM: 1, mm2: 10 });

const fromBus = { from: plusBus.stud, returnTo: minusBus.stud } as const;
circuit({
  ...fromBus,
  name: "compressor",
  load: 22,
  continuous: false,
  oneWayM: 4,
  mm2: 10,
  protect: { ...classT, ratingA: 40, distanceMm: 120 },
});
circuit({
  ...fromBus,
  name: "bench lamps",
  load: 2,
  oneWayM: 5,
  mm2: 1.5,
  protect: { ...classT, ratingA: 3, distanceMm: 120 },
});
