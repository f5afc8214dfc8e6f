import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  fusePanel,
  inverter,
  shunt,
  solarArray,
  solarController,
} from "loomwright";

// A cabin in the forest: 24 V, one lithium battery, four modules, an inverter for the kitchen, lamps on 24 V.
build({ name: "forest cabin", voltage: 24, insulationC: 105, lowestC: -20 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;

const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 200,
  internalMilliohm: 6,
  maxDischargeA: 200,
  maxChargeA: 100,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 200 });
const meter = shunt({ name: "battery meter", ratedA: 300 });
const plusBus = busBar({ name: "plus bus", side: "positive", ratedA: 250, studs: 6 });
const minusBus = busBar({ name: "minus bus", side: "negative", ratedA: 250, studs: 6 });

cable({
  name: "bank to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 1.5,
  gauge: 1,
  protect: { ...classT, ratingA: 175, distanceIn: 6 },
});
cable({ name: "switch to bus", from: mainSwitch.load, to: plusBus.stud, lengthFt: 1, gauge: 1 });
cable({ name: "bank to meter", from: bank.negative, to: meter.batterySide, lengthFt: 1.5, gauge: 1 });
cable({ name: "meter to bus", from: meter.systemSide, to: minusBus.stud, lengthFt: 1, gauge: 1 });

const fromBus = { from: plusBus.stud, returnTo: minusBus.stud } as const;
const kitchen = inverter({
  name: "kitchen inverter",
  continuousW: 2000,
  surgeW: 3000,
  efficiencyPercent: 92,
  cutOffV: 22,
  idleW: 10,
});
circuit({
  ...fromBus,
  name: "inverter supply",
  to: kitchen,
  oneWayFt: 4,
  gauge: 2,
  protect: { ...classT, ratingA: 150, distanceIn: 5 },
});

const panel = fusePanel({ name: "lamp panel", positions: 6, ratedA: 60, branchRatedA: 20 });
circuit({
  ...fromBus,
  name: "lamp panel feeder",
  to: panel,
  oneWayFt: 5,
  gauge: 8,
  protect: { ...classT, ratingA: 40, distanceIn: 5 },
});
for (const room of ["kitchen", "loft", "veranda"])
  circuit({
    name: `lamps, ${room}`,
    from: panel.branch,
    load: 1.2,
    oneWayFt: 22,
    gauge: 16,
    protect: { ratingA: 3, family: "ISO 8820-3 Type C" },
  });
circuit({
  name: "well pump",
  from: panel.branch,
  load: 5,
  oneWayFt: 30,
  gauge: 12,
  protect: { ratingA: 10, family: "ISO 8820-3 Type C" },
});

const roof = solarArray({
  name: "roof modules",
  openCircuitV: 37.5,
  shortCircuitA: 9.4,
  maxPowerV: 31,
  maxPowerA: 8.9,
  openCircuitPercentPerC: -0.3,
  maxSeriesFuseA: 20,
  series: 2,
  parallel: 2,
});
const controller = solarController({ name: "charge controller", maxInputV: 150, outputA: 45, outputV: 28.4 });
circuit({ name: "roof to controller", from: roof.positive, to: controller, oneWayFt: 25, gauge: 8 });
cable({
  name: "controller plus",
  from: controller.positive,
  to: plusBus.stud,
  lengthFt: 3,
  gauge: 6,
  protectFarEnd: { ...classT, ratingA: 60, distanceIn: 5 },
});
cable({ name: "controller minus", from: controller.negative, to: minusBus.stud, lengthFt: 3, gauge: 6 });
