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
  shunt,
} from "loomwright";

// A houseboat: 24 V lithium for the inverter, a converter with a common minus for the 12 V lamps, shore power most of the year.
build({ name: "houseboat", voltage: 24, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 300,
  internalMilliohm: 5,
  maxDischargeA: 250,
  maxChargeA: 150,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 300 });
const meter = shunt({ name: "meter", ratedA: 500 });
const plusBus = busBar({ name: "plus bus", side: "positive", ratedA: 250, studs: 6 });
const minusBus = busBar({ name: "minus bus", side: "negative", ratedA: 250, studs: 6 });
cable({
  name: "bank to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: "1/0",
  protect: { ...classT, ratingA: 225, distanceIn: 6 },
});
cable({ name: "switch to bus", from: mainSwitch.load, to: plusBus.stud, lengthFt: 1, gauge: "1/0" });
cable({ name: "bank to meter", from: bank.negative, to: meter.batterySide, lengthFt: 1, gauge: "1/0" });
cable({ name: "meter to bus", from: meter.systemSide, to: minusBus.stud, lengthFt: 1, gauge: "1/0" });

const fromBus = { from: plusBus.stud, returnTo: minusBus.stud } as const;
const galley = inverter({
  name: "galley inverter",
  continuousW: 2500,
  surgeW: 4000,
  efficiencyPercent: 92,
  cutOffV: 22,
});
circuit({
  ...fromBus,
  name: "inverter supply",
  to: galley,
  oneWayFt: 5,
  gauge: 1,
  protect: { ...classT, ratingA: 175, distanceIn: 5 },
});

const down = dcDcCharger({ name: "12 V converter", outputA: 20, outputV: 13, inputMinV: 20, runs: "always" });
circuit({
  ...fromBus,
  name: "converter input",
  to: down,
  oneWayFt: 3,
  gauge: 10,
  protect: { ...classT, ratingA: 25, distanceIn: 5 },
});
const lamps = fusePanel({ name: "lamp panel", positions: 8, ratedA: 40, branchRatedA: 15 });
cable({ name: "converter output", from: down.outputPositive, to: lamps.feed, lengthFt: 3, gauge: 10 });
cable({ name: "lamp panel minus", from: lamps.negative, to: minusBus.stud, lengthFt: 3, gauge: 10 });
for (const room of ["saloon", "cabin", "bathroom", "deck"])
  circuit({
    name: `lamps in the ${room}`,
    voltage: 12,
    from: lamps.branch,
    load: 2,
    oneWayFt: 18,
    gauge: 14,
    protect: 3,
  });

const shore = shoreCharger({ name: "shore charger", outputA: 60, outputV: 28.4 });
cable({
  name: "shore plus",
  from: shore.positive,
  to: plusBus.stud,
  lengthFt: 5,
  gauge: 4,
  protectFarEnd: { ...classT, ratingA: 80, distanceIn: 5 },
});
cable({ name: "shore minus", from: shore.negative, to: minusBus.stud, lengthFt: 5, gauge: 4 });
