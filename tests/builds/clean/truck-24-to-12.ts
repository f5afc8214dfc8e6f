import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  dcDcCharger,
  disconnect,
  fusePanel,
  motor,
  solarArray,
  solarController,
} from "loomwright";

// A former fire engine for long journeys: a 24 V lithium bank; the cabin's devices are for 12 V and hang on a converter.
build({ name: "long-distance truck", voltage: 24, insulationC: 105, installedIn: "vehicle", lowestC: -15 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "living bank",
  chemistry: "LiFePO4",
  nominalV: 25.6,
  capacityAh: 200,
  internalMilliohm: 7,
  maxDischargeA: 150,
  maxChargeA: 100,
  lowestC: -5,
  chargeCutOffC: 2,
});
const off = disconnect({ name: "living switch", ratedA: 200 });
const plus = busBar({ name: "24 V plus", side: "positive", ratedA: 150, studs: 6 });
const minus = busBar({ name: "24 V minus", side: "negative", ratedA: 150, studs: 7 });
cable({
  name: "bank plus",
  from: bank.positive,
  to: off.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 2 });
cable({ name: "bank minus", from: bank.negative, to: minus.stud, lengthFt: 3, gauge: 2 });

const rails = { from: plus.stud, returnTo: minus.stud } as const;
const heater = { name: "cooker heater", load: 12, oneWayFt: 9, gauge: 10 } as const;
circuit({ ...rails, ...heater, protect: { ...classT, ratingA: 20, distanceIn: 5 } });
const pump = motor({ name: "transfer pump", runningA: 9, startingA: 30, startingS: 0.3, continuous: false });
circuit({
  ...rails,
  name: "transfer pump pair",
  to: pump,
  oneWayFt: 18,
  gauge: 10,
  protect: { ...classT, ratingA: 20, distanceIn: 5 },
});
const converter = dcDcCharger({
  name: "24 to 12 V converter",
  outputA: 40,
  outputV: 13.4,
  inputMinV: 20,
  runs: "always",
});
circuit({
  ...rails,
  name: "converter feed",
  to: converter,
  oneWayFt: 3,
  gauge: 8,
  protect: { ...classT, ratingA: 40, distanceIn: 5 },
});
const panel = fusePanel({ name: "cabin panel", positions: 8, ratedA: 60, branchRatedA: 20 });
cable({ name: "12 V plus", from: converter.outputPositive, to: panel.feed, lengthFt: 2, gauge: 6 });
cable({ name: "12 V minus", from: converter.outputNegative, to: panel.negative, lengthFt: 2, gauge: 6 });
circuit({ name: "cabin lamps", from: panel.branch, load: 3, oneWayFt: 15, gauge: 14, protect: 5 });
circuit({ name: "fridge", from: panel.branch, load: 6, oneWayFt: 8, gauge: 12, protect: 10 });
circuit({ name: "radio", from: panel.branch, load: 5, oneWayFt: 10, gauge: 12, protect: 10 });
circuit({ name: "sockets", from: panel.branch, load: 10, oneWayFt: 7, gauge: 10, protect: 15 });

const roof = solarArray({
  name: "roof",
  openCircuitV: 24.3,
  shortCircuitA: 10.2,
  maxPowerV: 20.4,
  maxPowerA: 9.8,
  series: 2,
});
const tracker = solarController({ name: "tracker", maxInputV: 100, outputA: 20, outputV: 28.4 });
circuit({
  name: "roof pair",
  from: roof.positive,
  returnTo: roof.negative,
  to: tracker,
  oneWayFt: 14,
  gauge: 10,
});
cable({
  name: "tracker plus",
  from: tracker.positive,
  to: plus.stud,
  lengthFt: 3,
  gauge: 10,
  protectFarEnd: { ...classT, ratingA: 30, distanceIn: 5 },
});
cable({ name: "tracker minus", from: tracker.negative, to: minus.stud, lengthFt: 3, gauge: 10 });
