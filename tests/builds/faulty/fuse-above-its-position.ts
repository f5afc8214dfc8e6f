import { battery, build, cable, circuit, disconnect, fusePanel } from "loomwright";

// A tiny house: a fuse of 30 A in a position that is made for 15 A.
// Expected: error panel/rating at sockets
// Because: The maker's rating of a branch: a fuse of 30 A lets 30 A flow for hours through contacts for 15 A.
build({ name: "garden room", voltage: 12, insulationC: 105, installedIn: "building" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 200,
  internalMilliohm: 3,
  maxDischargeA: 300,
  maxChargeA: 40,
});
const off = disconnect({ name: "switch", ratedA: 100 });
const panel = fusePanel({ name: "panel", positions: 6, ratedA: 80, branchRatedA: 15 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 4, protect: classT(80) });
cable({ name: "panel plus", from: off.load, to: panel.feed, lengthFt: 3, gauge: 4 });
cable({ name: "panel minus", from: panel.negative, to: bank.negative, lengthFt: 4, gauge: 4 });
circuit({ name: "lamps", from: panel.branch, load: 4, oneWayFt: 15, gauge: 12, protect: classT(6) });
circuit({ name: "sockets", from: panel.branch, load: 12, oneWayFt: 8, gauge: 10, protect: classT(30) });
