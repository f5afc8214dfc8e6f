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
  fusePanel,
  motor,
  shunt,
} from "loomwright";

// A narrowboat: an engine battery with the alternator, a booster to two AGM house batteries, the hull bonded in one place.
build({ name: "narrowboat", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const plusBus = busBar({ name: "plus bus", side: "positive", ratedA: 250, studs: 6 });
const minusBus = busBar({ name: "minus bus", side: "negative", ratedA: 250, studs: 8 });
const bankPlus = busBar({ name: "bank plus", side: "positive", ratedA: 250, studs: 4 });
const bankMinus = busBar({ name: "bank minus", side: "negative", ratedA: 250, studs: 4 });

// Two alike, each with a fuse of its own and cables of one length.
for (const place of ["port", "starboard"]) {
  const house = battery({
    name: `house battery, ${place}`,
    chemistry: "AGM",
    capacityAh: 110,
    internalMilliohm: 5,
    maxDischargeA: 200,
    maxChargeA: 30,
  });
  cable({
    name: `house plus, ${place}`,
    from: house.positive,
    to: bankPlus.stud,
    lengthFt: 2,
    gauge: 2,
    protect: { ...classT, ratingA: 125, distanceIn: 6 },
  });
  cable({ name: `house minus, ${place}`, from: house.negative, to: bankMinus.stud, lengthFt: 2, gauge: 2 });
}
const isolator = disconnect({ name: "isolator", ratedA: 250 });
const meter = shunt({ name: "battery meter", ratedA: 300 });
cable({ name: "bank to isolator", from: bankPlus.stud, to: isolator.line, lengthFt: 1, gauge: "2/0" });
cable({ name: "isolator to bus", from: isolator.load, to: plusBus.stud, lengthFt: 1, gauge: "2/0" });
cable({ name: "bank to meter", from: bankMinus.stud, to: meter.batterySide, lengthFt: 1, gauge: "2/0" });
cable({ name: "meter to bus", from: meter.systemSide, to: minusBus.stud, lengthFt: 1, gauge: "2/0" });

// The engine's own side returns through the hull.
const hull = chassis({ name: "hull", milliohm: 0.2 });
const engineBattery = battery({
  name: "engine battery",
  chemistry: "flooded lead-acid",
  capacityAh: 90,
  shortCircuitA: 1900,
  maxDischargeA: 400,
  maxChargeA: 80,
});
const engine = alternator({ name: "alternator", ratedA: 70 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: engineBattery.positive,
  lengthFt: 6,
  gauge: 4,
  engineSpace: true,
  protectFarEnd: { ...classT, ratingA: 100, distanceIn: 6 },
});
cable({
  name: "alternator minus",
  from: engine.negative,
  to: hull.metal,
  lengthFt: 2,
  gauge: 4,
  engineSpace: true,
});
cable({ name: "engine battery minus", from: engineBattery.negative, to: hull.metal, lengthFt: 2, gauge: 2 });
cable({ name: "hull bond", from: minusBus.stud, to: hull.bond, lengthFt: 2, gauge: 2 });

const booster = dcDcCharger({ name: "booster", outputA: 30, inputMinV: 11 });
circuit({
  name: "booster input",
  from: engineBattery.positive,
  returnTo: minusBus.stud,
  to: booster,
  oneWayFt: 8,
  gauge: 4,
  protect: { ...classT, ratingA: 60, distanceIn: 7 },
});
cable({
  name: "booster output",
  from: booster.outputPositive,
  to: plusBus.stud,
  lengthFt: 3,
  gauge: 8,
  protectFarEnd: { ...classT, ratingA: 40, distanceIn: 5 },
});

const panel = fusePanel({ name: "cabin panel", positions: 10, ratedA: 100, branchRatedA: 30 });
circuit({
  name: "cabin panel feeder",
  from: plusBus.stud,
  returnTo: minusBus.stud,
  to: panel,
  oneWayFt: 10,
  gauge: 2,
  protect: { ...classT, ratingA: 80, distanceIn: 5 },
});
const pump = motor({ name: "shower pump", runningA: 6, startingA: 15, continuous: false });
circuit({ name: "shower pump supply", from: panel.branch, to: pump, oneWayFt: 12, gauge: 12, protect: 15 });
circuit({ name: "cool box", from: panel.branch, load: 5, oneWayFt: 10, gauge: 12, protect: 10 });
circuit({ name: "saloon lamps", from: panel.branch, load: 3, oneWayFt: 20, gauge: 14, protect: 5 });
circuit({
  name: "bow lamp",
  from: panel.branch,
  load: 3,
  oneWayFt: 45,
  gauge: 8,
  protect: 5,
  critical: true,
});

// It must run while the boat is left alone, so it begins ahead of the isolator.
circuit({
  name: "bilge pump",
  from: bankPlus.stud,
  returnTo: minusBus.stud,
  load: 5,
  oneWayFt: 9,
  gauge: 12,
  critical: true,
  protect: { ...classT, ratingA: 10, distanceIn: 6 },
});
