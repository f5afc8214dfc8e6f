import {
  alternator,
  battery,
  build,
  busBar,
  cable,
  chassis,
  circuit,
  disconnect,
  fuseHolder,
  inverter,
  load,
  motor,
  starterMotor,
} from "loomwright";

// A service van: one big bank of two AGM batteries in parallel for cranking and for tools, compressor and work lamps.
build({ name: "mobile workshop", voltage: 12, insulationC: 105, installedIn: "vehicle" });

const strip = { family: "ISO 8820-5 Type SF 51", ratedV: 32 } as const;
const metal = chassis({ name: "van body", milliohm: 0.3 });
const plus = busBar({ name: "plus post", side: "positive", ratedA: 400, studs: 6 });
const tools = busBar({ name: "tool bar", side: "positive", ratedA: 250, studs: 6 });
const minus = busBar({ name: "minus post", side: "negative", ratedA: 400, studs: 8 });
const agm = {
  chemistry: "AGM",
  capacityAh: 105,
  shortCircuitA: 900,
  maxDischargeA: 500,
  maxChargeA: 70,
} as const;
for (const place of ["front", "rear"]) {
  const one = battery({ ...agm, name: `${place} battery` });
  cable({
    name: `${place} plus`,
    from: one.positive,
    to: plus.stud,
    lengthFt: 1,
    gauge: "2/0",
    protect: { ...strip, ratingA: 250, distanceIn: 5 },
  });
  cable({ name: `${place} minus`, from: one.negative, to: minus.stud, lengthFt: 1, gauge: "2/0" });
}
cable({ name: "body strap", from: minus.stud, to: metal.bond, lengthFt: 1, gauge: "2/0" });
const starter = starterMotor({ name: "starter", crankingA: 260, minimumV: 8.5 });
cable({ name: "crank", from: plus.stud, to: starter.positive, lengthFt: 4, gauge: "2/0", engineSpace: true });
cable({
  name: "starter strap",
  from: starter.negative,
  to: metal.metal,
  lengthFt: 1,
  gauge: "2/0",
  engineSpace: true,
});
const engine = alternator({ name: "alternator", ratedA: 120 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: plus.stud,
  lengthFt: 5,
  gauge: 1,
  engineSpace: true,
  protectFarEnd: { ...strip, ratingA: 150, distanceIn: 6 },
});
cable({
  name: "alternator strap",
  from: engine.negative,
  to: metal.metal,
  lengthFt: 1,
  gauge: 1,
  engineSpace: true,
});

const off = disconnect({ name: "tool switch", ratedA: 250 });
const toolFuse = fuseHolder({ name: "tool fuse", ratingA: 175, ...strip, on: plus.stud });
cable({ name: "fuse to switch", from: toolFuse.load, to: off.line, lengthFt: 2, gauge: "2/0" });
cable({ name: "switch to bar", from: off.load, to: tools.stud, lengthFt: 1, gauge: "2/0" });
const rails = { from: tools.stud, returnTo: minus.stud } as const;
const saw = inverter({ name: "tool inverter", continuousW: 700, surgeW: 1400, cutOffV: 10.5 });
circuit({
  ...rails,
  name: "inverter pair",
  to: saw,
  oneWayFt: 4,
  gauge: 2,
  protect: { ...strip, ratingA: 100, distanceIn: 5 },
});
const air = motor({ name: "compressor", runningA: 22, startingA: 60, startingS: 0.4, continuous: false });
circuit({
  ...rails,
  name: "compressor pair",
  to: air,
  oneWayFt: 8,
  gauge: 8,
  protect: { ...strip, family: "ISO 8820-5 Type SF 30", ratingA: 40, distanceIn: 5 },
});
const lamps = load({ name: "work lamps", currentA: 9 });
circuit({
  ...rails,
  name: "work lamp pair",
  to: lamps,
  oneWayFt: 15,
  gauge: 10,
  protect: { ratingA: 15, family: "ISO 8820-3 Type C", distanceIn: 5, interruptingA: 2_000 },
});
