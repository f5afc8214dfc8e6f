import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  dcDcCharger,
  disconnect,
  fusePanel,
  inverter,
  shoreCharger,
} from "loomwright";

// A land surveyor's van: a 48 V lithium pack for the inverter, and an isolated converter for the 12 V panel.
build({ name: "survey van", voltage: 48, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;

const pack = battery({
  name: "48 V pack",
  chemistry: "LiFePO4",
  nominalV: 48,
  capacityAh: 100,
  internalMilliohm: 15,
  maxDischargeA: 100,
  maxChargeA: 50,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
const plusBus = busBar({ name: "plus bus", side: "positive", ratedA: 150, studs: 4 });
const minusBus = busBar({ name: "minus bus", side: "negative", ratedA: 150, studs: 4 });
cable({
  name: "pack to switch",
  from: pack.positive,
  to: mainSwitch.line,
  lengthFt: 1.5,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
cable({ name: "switch to bus", from: mainSwitch.load, to: plusBus.stud, lengthFt: 1, gauge: 2 });
cable({ name: "pack minus", from: pack.negative, to: minusBus.stud, lengthFt: 2, gauge: 2 });

const fromBus = { from: plusBus.stud, returnTo: minusBus.stud } as const;
const tools = inverter({
  name: "tool inverter",
  continuousW: 3000,
  surgeW: 4000,
  efficiencyPercent: 93,
  cutOffV: 44,
});
circuit({
  ...fromBus,
  name: "inverter supply",
  to: tools,
  oneWayFt: 4,
  gauge: 4,
  protect: { ...classT, ratingA: 100, distanceIn: 5 },
});

const house = dcDcCharger({
  name: "12 V converter",
  outputA: 30,
  outputV: 13.2,
  inputMinV: 42,
  isolated: true,
  runs: "always",
});
circuit({
  ...fromBus,
  name: "converter input",
  to: house,
  oneWayFt: 3,
  gauge: 10,
  protect: { ...classT, ratingA: 20, distanceIn: 5 },
});
const panel = fusePanel({ name: "12 V panel", positions: 6, ratedA: 60, branchRatedA: 20 });
cable({ name: "converter plus", from: house.outputPositive, to: panel.feed, lengthFt: 3, gauge: 8 });
cable({ name: "converter minus", from: house.outputNegative, to: panel.negative, lengthFt: 3, gauge: 8 });
circuit({ name: "lamps", voltage: 12, from: panel.branch, load: 3, oneWayFt: 10, gauge: 14, protect: 5 });
circuit({
  name: "instrument sockets",
  voltage: 12,
  from: panel.branch,
  load: 8,
  oneWayFt: 7,
  gauge: 12,
  protect: 10,
});

const depot = shoreCharger({ name: "depot charger", outputA: 25, outputV: 57.6 });
cable({
  name: "charger plus",
  from: depot.positive,
  to: plusBus.stud,
  lengthFt: 4,
  gauge: 8,
  protectFarEnd: { ...classT, ratingA: 40, distanceIn: 5 },
});
cable({ name: "charger minus", from: depot.negative, to: minusBus.stud, lengthFt: 4, gauge: 8 });
