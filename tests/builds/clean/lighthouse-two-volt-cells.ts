import {
  battery,
  build,
  cable,
  circuit,
  disconnect,
  fusePanel,
  solarArray,
  solarController,
} from "loomwright";

// A keeper's house: twelve cells of 2 V in series for 24 V; metric.
build({ name: "keeper's house", voltage: 24, insulationC: 90, installedIn: "building", lowestC: -10 });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceMm: 120 }) as const;
const cells = Array.from({ length: 12 }, (_, index) =>
  battery({
    name: `cell ${index + 1}`,
    chemistry: "flooded lead-acid",
    nominalV: 2,
    capacityAh: 400,
    internalMilliohm: 0.6,
    maxDischargeA: 400,
    maxChargeA: 60,
  }),
);
const first = cells[0]!;
const last = cells[11]!;
cells.slice(1).forEach((next, index) => {
  cable({
    name: `link ${index + 1}`,
    from: cells[index]!.positive,
    to: next.negative,
    lengthM: 0.2,
    mm2: 50,
  });
});
const off = disconnect({ name: "main switch", ratedA: 150 });
const panel = fusePanel({ name: "panel", positions: 6, ratedA: 100, branchRatedA: 30 });
cable({ name: "bank plus", from: last.positive, to: off.line, lengthM: 0.8, mm2: 35, protect: classT(100) });
cable({ name: "panel plus", from: off.load, to: panel.feed, lengthM: 0.8, mm2: 35 });
cable({ name: "panel minus", from: panel.negative, to: first.negative, lengthM: 1.5, mm2: 35 });
circuit({
  name: "lamp",
  from: panel.branch,
  load: 10,
  critical: true,
  oneWayM: 10,
  mm2: 10,
  protect: classT(15),
});
circuit({ name: "kitchen", from: panel.branch, load: 6, oneWayM: 8, mm2: 4, protect: classT(10) });
const roof = solarArray({
  name: "roof",
  openCircuitV: 37.4,
  shortCircuitA: 9.8,
  maxPowerV: 31.2,
  maxPowerA: 9.2,
  series: 2,
  parallel: 2,
});
const tracker = solarController({ name: "tracker", maxInputV: 100, outputA: 45, outputV: 28.8 });
const isolator = disconnect({ name: "roof isolator", ratedA: 40 });
cable({ name: "roof plus", from: roof.positive, to: isolator.line, lengthM: 10, mm2: 10 });
cable({ name: "roof plus inside", from: isolator.load, to: tracker.solarPositive, lengthM: 2, mm2: 10 });
cable({ name: "roof minus", from: roof.negative, to: tracker.solarNegative, lengthM: 12, mm2: 10 });
cable({
  name: "tracker plus",
  from: tracker.positive,
  to: off.load,
  lengthM: 1,
  mm2: 16,
  protectFarEnd: classT(60),
});
cable({ name: "tracker minus", from: tracker.negative, to: panel.negative, lengthM: 1, mm2: 16 });
