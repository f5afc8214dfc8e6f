import { battery, build, busBar, cable, circuit, disconnect, fuseHolder, fusePanel } from "loomwright";

// A bus: the feed of the panel was too thin, and somebody laid 10 AWG beside the 4 AWG.
// Expected: error protection/unprotected-path at patch
// Because: NEC 310.10: wires in parallel are of one size; 33 CFR 183.455: 125 A do not protect 10 AWG, which may carry 60 A.
build({ name: "patched bus", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 200,
  internalMilliohm: 4,
  maxDischargeA: 200,
  maxChargeA: 100,
});
const off = disconnect({ name: "main switch", ratedA: 250 });
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 250, studs: 8 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 250, studs: 8 });
cable({
  name: "bank plus",
  from: bank.positive,
  to: off.line,
  lengthFt: 2,
  gauge: "1/0",
  protect: classT(200),
});
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: "1/0" });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: "1/0" });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
circuit({ ...rails, name: "lamps", load: 3, oneWayFt: 10, gauge: 14, protect: classT(6) });
const panel = fusePanel({ name: "panel", positions: 8, ratedA: 125, branchFamily: "ISO 8820-3 Type C" });
const lead = fuseHolder({
  name: "panel fuse",
  on: plus.stud,
  ratingA: 125,
  family: "UL 248-15 Class T",
  interruptingA: 20_000,
  ratedV: 125,
});
cable({ name: "feed", from: lead.load, to: panel.feed, lengthFt: 6, gauge: 4 });
cable({ name: "patch", from: lead.load, to: panel.feed, lengthFt: 6, gauge: 10 });
cable({ name: "panel minus", from: panel.negative, to: minus.stud, lengthFt: 6, gauge: 4 });
circuit({ name: "oven fan", from: panel.branch, load: 12, oneWayFt: 6, gauge: 10, protect: 20 });
circuit({ name: "heated seats", from: panel.branch, load: 15, oneWayFt: 6, gauge: 10, protect: 20 });
