import { battery, build, busBar, cable, circuit, disconnect, fusePanel, inverter } from "loomwright";

// A bus as a home: 12 V, two lithium batteries in parallel, each with its own fuse, and a 2,000 W inverter.
build({ name: "bus home", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bankPlus = busBar({ name: "bank plus", side: "positive", ratedA: 400, studs: 4 });
const minusBus = busBar({ name: "minus bus", side: "negative", ratedA: 400, studs: 6 });
for (const number of [1, 2]) {
  const cell = battery({
    name: `battery ${number}`,
    chemistry: "LiFePO4",
    capacityAh: 200,
    internalMilliohm: 4,
    maxDischargeA: 200,
    maxChargeA: 100,
  });
  cable({
    name: `plus of battery ${number}`,
    from: cell.positive,
    to: bankPlus.stud,
    lengthFt: 2,
    gauge: "1/0",
    protect: { ...classT, ratingA: 200, distanceIn: 6 },
  });
  cable({
    name: `minus of battery ${number}`,
    from: cell.negative,
    to: minusBus.stud,
    lengthFt: 2,
    gauge: "1/0",
  });
}
const mainSwitch = disconnect({ name: "main switch", ratedA: 400 });
const plusBus = busBar({ name: "plus bus", side: "positive", ratedA: 400, studs: 4 });
cable({ name: "bank to switch", from: bankPlus.stud, to: mainSwitch.line, lengthFt: 1, gauge: "4/0" });
cable({ name: "switch to bus", from: mainSwitch.load, to: plusBus.stud, lengthFt: 1, gauge: "4/0" });

const kitchen = inverter({
  name: "kitchen inverter",
  continuousW: 2000,
  surgeW: 3500,
  efficiencyPercent: 91,
  cutOffV: 11,
});
circuit({
  name: "inverter supply",
  from: plusBus.stud,
  returnTo: minusBus.stud,
  to: kitchen,
  oneWayFt: 4,
  gauge: "3/0",
  protect: { ...classT, ratingA: 300, distanceIn: 5 },
});
const panel = fusePanel({ name: "fuse panel", positions: 12, ratedA: 100, branchRatedA: 30 });
circuit({
  name: "panel feeder",
  from: plusBus.stud,
  returnTo: minusBus.stud,
  to: panel,
  oneWayFt: 8,
  gauge: 4,
  protect: { ...classT, ratingA: 80, distanceIn: 5 },
});
const blade = (ratingA: number) => ({ ratingA, family: "ISO 8820-3 Type C" }) as const;
circuit({ name: "bedroom lamps", from: panel.branch, load: 2, oneWayFt: 24, gauge: 14, protect: blade(5) });
circuit({ name: "kitchen lamps", from: panel.branch, load: 2, oneWayFt: 9, gauge: 16, protect: blade(5) });
circuit({ name: "cool box", from: panel.branch, load: 6, oneWayFt: 9, gauge: 12, protect: blade(10) });
circuit({ name: "heater fan", from: panel.branch, load: 8, oneWayFt: 12, gauge: 12, protect: blade(10) });
circuit({
  name: "water pump",
  from: panel.branch,
  load: 7,
  continuous: false,
  oneWayFt: 14,
  gauge: 12,
  protect: blade(10),
});
