import {
  alternator,
  battery,
  build,
  busBar,
  cable,
  chassis,
  circuit,
  dcDcCharger,
  disconnect,
  fuseHolder,
  fusePanel,
  motor,
  shoreCharger,
  shunt,
  solarArray,
  solarController,
  starterMotor,
} from "loomwright";

// A diesel catamaran: lithium in the port hull for everything, a start battery in the starboard hull, a booster between them,
// modules on the roof, and a charger for the quay.
build({ name: "catamaran", voltage: 12, insulationC: 105, installedIn: "boat", lowestC: 0 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const house = battery({
  name: "house bank",
  chemistry: "LiFePO4",
  capacityAh: 300,
  internalMilliohm: 4,
  maxDischargeA: 200,
  maxChargeA: 150,
});
const mainFuse = fuseHolder({ name: "house fuse", ratingA: 200, ...classT, on: house.positive });
const mainSwitch = disconnect({ name: "house switch", ratedA: 300 });
const plus = busBar({ name: "house plus", side: "positive", ratedA: 250, studs: 8 });
const minus = busBar({ name: "house minus", side: "negative", ratedA: 250, studs: 8 });
const monitor = shunt({ name: "monitor", ratedA: 300 });
cable({ name: "fuse to switch", from: mainFuse.load, to: mainSwitch.line, lengthFt: 1, gauge: "2/0" });
cable({ name: "switch to bus", from: mainSwitch.load, to: plus.stud, lengthFt: 1, gauge: "2/0" });
cable({ name: "house to monitor", from: house.negative, to: monitor.batterySide, lengthFt: 1, gauge: "2/0" });
cable({ name: "monitor to bus", from: monitor.systemSide, to: minus.stud, lengthFt: 1, gauge: "2/0" });

const engineBattery = battery({
  name: "start battery",
  chemistry: "AGM",
  capacityAh: 75,
  internalMilliohm: 4,
  maxDischargeA: 700,
  maxChargeA: 60,
});
const block = chassis({ name: "engine block", milliohm: 0.1 });
const starter = starterMotor({ name: "starter", crankingA: 180, minimumV: 8 });
const engineSwitch = disconnect({ name: "engine switch", ratedA: 250 });
cable({ name: "start plus", from: engineBattery.positive, to: engineSwitch.line, lengthFt: 2, gauge: 1 });
cable({
  name: "crank",
  from: engineSwitch.load,
  to: starter.positive,
  lengthFt: 4,
  gauge: 1,
  engineSpace: true,
});
cable({
  name: "starter earth",
  from: starter.negative,
  to: block.metal,
  lengthFt: 1,
  gauge: 1,
  engineSpace: true,
});
cable({
  name: "start minus",
  from: engineBattery.negative,
  to: block.metal,
  lengthFt: 4,
  gauge: 1,
  engineSpace: true,
});
cable({ name: "bond", from: minus.stud, to: block.bond, lengthFt: 16, gauge: 1 });
const engine = alternator({ name: "alternator", ratedA: 80 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: engineBattery.positive,
  lengthFt: 5,
  gauge: 4,
  engineSpace: true,
  protectFarEnd: { ...classT, ratingA: 110, distanceIn: 6 },
});
cable({
  name: "alternator minus",
  from: engine.negative,
  to: block.metal,
  lengthFt: 1,
  gauge: 4,
  engineSpace: true,
});

const booster = dcDcCharger({ name: "booster", outputA: 30, inputMinV: 11, runs: "with the engine" });
circuit({
  name: "booster feed",
  from: engineBattery.positive,
  returnTo: minus.stud,
  to: booster,
  oneWayFt: 16,
  gauge: 4,
  protect: { ...classT, ratingA: 60, distanceIn: 6 },
});
cable({
  name: "booster out",
  from: booster.outputPositive,
  to: plus.stud,
  lengthFt: 3,
  gauge: 8,
  protectFarEnd: { ...classT, ratingA: 40, distanceIn: 5 },
});

const roof = solarArray({
  name: "roof",
  openCircuitV: 22.6,
  shortCircuitA: 9.7,
  maxPowerV: 18.9,
  maxPowerA: 9.1,
  series: 2,
});
const tracker = solarController({ name: "tracker", maxInputV: 75, outputA: 30, outputV: 14.2 });
circuit({
  name: "roof pair",
  from: roof.positive,
  returnTo: roof.negative,
  to: tracker,
  oneWayFt: 20,
  gauge: 10,
});
cable({
  name: "tracker plus",
  from: tracker.positive,
  to: plus.stud,
  lengthFt: 4,
  gauge: 8,
  protectFarEnd: { ...classT, ratingA: 40, distanceIn: 5 },
});
cable({ name: "tracker minus", from: tracker.negative, to: minus.stud, lengthFt: 4, gauge: 8 });
const quay = shoreCharger({ name: "quay charger", outputA: 40, outputV: 14.2 });
cable({
  name: "quay plus",
  from: quay.positive,
  to: plus.stud,
  lengthFt: 5,
  gauge: 6,
  protectFarEnd: { ...classT, ratingA: 60, distanceIn: 5 },
});
cable({ name: "quay minus", from: quay.negative, to: minus.stud, lengthFt: 5, gauge: 6 });

const panel = fusePanel({
  name: "nav panel",
  positions: 12,
  ratedA: 100,
  branchRatedA: 30,
  testedBehind: { family: "UL 248-15 Class T", ratingA: 100, interruptingA: 10_000 },
});
circuit({
  name: "nav panel feed",
  from: plus.stud,
  returnTo: minus.stud,
  to: panel,
  oneWayFt: 9,
  gauge: 2,
  protect: { ...classT, ratingA: 90, distanceIn: 5 },
});
const blade = { family: "ISO 8820-3 Type C" } as const;
circuit({
  name: "navigation lamps",
  from: panel.branch,
  load: 2,
  oneWayFt: 30,
  gauge: 12,
  critical: true,
  protect: { ...blade, ratingA: 5 },
});
circuit({
  name: "chart plotter",
  from: panel.branch,
  load: 3,
  oneWayFt: 8,
  gauge: 14,
  critical: true,
  protect: { ...blade, ratingA: 5 },
});
circuit({
  name: "fridge",
  from: panel.branch,
  load: 5,
  oneWayFt: 12,
  gauge: 12,
  protect: { ...blade, ratingA: 10 },
});
const tap = motor({ name: "fresh water pump", runningA: 6, startingA: 14, continuous: false });
circuit({
  name: "tap feed",
  from: panel.branch,
  to: tap,
  oneWayFt: 14,
  gauge: 12,
  protect: { ...blade, ratingA: 10 },
});
// One bilge pump a hull, each ahead of the switch on a fuse of its own.
for (const hull of ["port", "starboard"])
  circuit({
    name: `bilge pump, ${hull}`,
    from: house.positive,
    returnTo: minus.stud,
    load: 4,
    oneWayFt: hull === "port" ? 8 : 24,
    gauge: hull === "port" ? 14 : 10,
    critical: true,
    protect: { ...classT, ratingA: 6, distanceIn: 6 },
  });
