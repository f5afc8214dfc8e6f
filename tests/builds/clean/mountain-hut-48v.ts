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

// A club hut: 48 V from four 12 V AGM batteries in series, an inverter for the kitchen, a tall string on the south wall.
build({ name: "club hut", voltage: 48, insulationC: 90, lowestC: -25 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const cell = (name: string) =>
  battery({
    name,
    chemistry: "AGM",
    nominalV: 12,
    capacityAh: 200,
    internalMilliohm: 3.5,
    maxDischargeA: 400,
    maxChargeA: 60,
  });
const first = cell("battery 1");
const second = cell("battery 2");
const third = cell("battery 3");
const fourth = cell("battery 4");
const link = { lengthM: 0.3, mm2: 50 } as const;
cable({ ...link, name: "link 1 to 2", from: first.positive, to: second.negative });
cable({ ...link, name: "link 2 to 3", from: second.positive, to: third.negative });
cable({ ...link, name: "link 3 to 4", from: third.positive, to: fourth.negative });

const mainSwitch = disconnect({ name: "main switch", ratedA: 200 });
const plusBus = busBar({ name: "plus bus", side: "positive", ratedA: 200, studs: 4 });
const minusBus = busBar({ name: "minus bus", side: "negative", ratedA: 200, studs: 4 });
cable({
  name: "bank to switch",
  from: fourth.positive,
  to: mainSwitch.line,
  lengthM: 0.5,
  mm2: 50,
  protect: { ...classT, ratingA: 150, distanceMm: 150 },
});
cable({ name: "switch to bus", from: mainSwitch.load, to: plusBus.stud, lengthM: 0.4, mm2: 50 });
cable({ name: "bank minus", from: first.negative, to: minusBus.stud, lengthM: 0.8, mm2: 50 });

const fromBus = { from: plusBus.stud, returnTo: minusBus.stud } as const;
const kitchen = inverter({
  name: "kitchen inverter",
  continuousW: 4000,
  surgeW: 6000,
  efficiencyPercent: 93,
  cutOffV: 44,
});
circuit({
  ...fromBus,
  name: "inverter supply",
  to: kitchen,
  oneWayM: 1.5,
  mm2: 35,
  protect: { ...classT, ratingA: 125, distanceMm: 120 },
});
circuit({
  ...fromBus,
  name: "stair lamps",
  load: 1,
  oneWayM: 12,
  mm2: 1.5,
  protect: { ...classT, ratingA: 3, distanceMm: 120 },
});

const wall = solarArray({
  name: "south wall",
  openCircuitV: 40,
  shortCircuitA: 10,
  maxPowerV: 33,
  maxPowerA: 9.4,
  openCircuitPercentPerC: -0.29,
  series: 3,
});
const isolator = disconnect({ name: "array isolator", ratedA: 25 });
const sun = solarController({ name: "sun controller", maxInputV: 150, outputA: 30, outputV: 57.6 });
cable({ name: "wall to isolator", from: wall.positive, to: isolator.line, lengthM: 4, mm2: 6 });
cable({ name: "isolator to controller", from: isolator.load, to: sun.solarPositive, lengthM: 1, mm2: 6 });
cable({ name: "wall return", from: sun.solarNegative, to: wall.negative, lengthM: 5, mm2: 6 });
cable({
  name: "sun plus",
  from: sun.positive,
  to: plusBus.stud,
  lengthM: 1,
  mm2: 10,
  protectFarEnd: { ...classT, ratingA: 40, distanceMm: 120 },
});
cable({ name: "sun minus", from: sun.negative, to: minusBus.stud, lengthM: 1, mm2: 10 });
