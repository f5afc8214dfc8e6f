import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  scenario,
  solarArray,
  solarController,
} from "loomwright";

// A radio relay on a hill: 12 V gel batteries in parallel, each with a fuse, sun only, and it never sleeps.
build({ name: "mast relay", voltage: 12, insulationC: 90, lowestC: -20 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bankPlus = busBar({ name: "bank plus", side: "positive", ratedA: 100, studs: 4 });
const minusBus = busBar({ name: "minus bus", side: "negative", ratedA: 100, studs: 6 });
for (const side of ["left", "right"]) {
  const gel = battery({
    name: `gel battery, ${side}`,
    chemistry: "gel",
    capacityAh: 100,
    internalMilliohm: 5,
    maxDischargeA: 100,
    maxChargeA: 20,
  });
  cable({
    name: `plus, ${side}`,
    from: gel.positive,
    to: bankPlus.stud,
    lengthM: 0.5,
    mm2: 16,
    protect: { ...classT, ratingA: 40, distanceMm: 150 },
  });
  cable({ name: `minus, ${side}`, from: gel.negative, to: minusBus.stud, lengthM: 0.5, mm2: 16 });
}
const mainSwitch = disconnect({ name: "main switch", ratedA: 100 });
const plusBus = busBar({ name: "plus bus", side: "positive", ratedA: 100, studs: 4 });
cable({ name: "bank to switch", from: bankPlus.stud, to: mainSwitch.line, lengthM: 0.4, mm2: 25 });
cable({ name: "switch to bus", from: mainSwitch.load, to: plusBus.stud, lengthM: 0.4, mm2: 25 });

const fromBus = { from: plusBus.stud, returnTo: minusBus.stud } as const;
const relay = circuit({
  ...fromBus,
  name: "relay station",
  loadW: 50,
  minimumV: 11,
  critical: true,
  oneWayM: 3,
  mm2: 6,
  protect: { ...classT, ratingA: 10, distanceMm: 120 },
});
const lamp = circuit({
  ...fromBus,
  name: "obstacle lamp",
  load: 1,
  oneWayM: 15,
  mm2: 2.5,
  protect: { ...classT, ratingA: 3, distanceMm: 120 },
});

const roof = solarArray({
  name: "modules",
  openCircuitV: 24,
  shortCircuitA: 9,
  maxPowerV: 20,
  maxPowerA: 8.5,
  openCircuitPercentPerC: -0.3,
  series: 2,
});
const sun = solarController({ name: "sun controller", maxInputV: 75, outputA: 25, outputV: 14.1 });
circuit({ name: "modules to controller", from: roof.positive, to: sun, oneWayM: 4, mm2: 6 });
cable({
  name: "sun plus",
  from: sun.positive,
  to: plusBus.stud,
  lengthM: 1,
  mm2: 10,
  protectFarEnd: { ...classT, ratingA: 35, distanceMm: 120 },
});
cable({ name: "sun minus", from: sun.negative, to: minusBus.stud, lengthM: 1, mm2: 10 });

scenario({ name: "December night", on: [relay, lamp], chargePercent: 50 });
scenario({ name: "June noon", on: [relay], chargePercent: 75, sunPercent: 100 });
