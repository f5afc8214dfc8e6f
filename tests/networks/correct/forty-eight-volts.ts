import { battery, build, busBar, cable, circuit, dcDcCharger, disconnect, inverter } from "loomwright";

build({ voltage: 48, insulationC: 105 });
const bank = battery({
  chemistry: "LiFePO4",
  nominalV: 48,
  capacityAh: 100,
  internalMilliohm: 20,
  maxDischargeA: 100,
});
const bus = busBar({ side: "positive", ratedA: 150, studs: 4 });
const back = busBar({ side: "negative", ratedA: 150, studs: 4 });
const off = disconnect({ ratedA: 150 });
const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
cable({
  name: "bank to disconnect",
  from: bank.positive,
  to: off.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
cable({ name: "disconnect to bus", from: off.load, to: bus.stud, lengthFt: 1, gauge: 2 });
cable({ name: "bank return", from: bank.negative, to: back.stud, lengthFt: 2, gauge: 2 });
const mains = inverter({ continuousW: 1_900, cutOffV: 42 });
circuit({
  name: "inverter supply",
  from: bus.stud,
  returnTo: back.stud,
  to: mains,
  oneWayFt: 4,
  gauge: 2,
  protect: { ...classT, ratingA: 100, distanceIn: 4 },
});
// Twelve volts for the lamps: the converter runs whenever they do.
const converter = dcDcCharger({ outputA: 20, outputV: 12, inputMinV: 42, runs: "always" });
circuit({
  name: "converter input",
  from: bus.stud,
  returnTo: back.stud,
  to: converter,
  oneWayFt: 3,
  gauge: 12,
  protect: { ...classT, ratingA: 10, distanceIn: 4 },
});
circuit({
  name: "lamps",
  voltage: 12,
  from: converter.outputPositive,
  returnTo: back.stud,
  load: 8,
  oneWayFt: 6,
  gauge: 10,
  protect: { ...classT, ratingA: 10, distanceIn: 4 },
});
