import { battery, build, cable, circuit, disconnect, fusePanel, motor } from "loomwright";

// A sailing boat with a windlass.
build({ name: "sailboat chassis free", voltage: 12, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 400,
  maxChargeA: 40,
});
const off = disconnect({ name: "battery switch", ratedA: 200 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 2, protect: classT(150) });
const rails = { from: off.load, returnTo: bank.negative } as const;
const panel = fusePanel({
  name: "nav panel",
  positions: 10,
  ratedA: 60,
  branchRatedA: 20,
  testedBehind: { family: "UL 248-15 Class T", ratingA: 150, interruptingA: 10_000 },
});
circuit({ ...rails, name: "nav feed", to: panel, oneWayFt: 6, gauge: 6, protect: classT(50) });
circuit({
  name: "masthead",
  from: panel.branch,
  load: 0.4,
  critical: true,
  oneWayFt: 50,
  gauge: 16,
  protect: 2,
});
circuit({ name: "radio", from: panel.branch, load: 5, critical: true, oneWayFt: 6, gauge: 12, protect: 10 });
circuit({ name: "plotter", from: panel.branch, load: 2, critical: true, oneWayFt: 6, gauge: 14, protect: 3 });
circuit({
  name: "bilge pump",
  from: bank.positive,
  returnTo: bank.negative,
  load: 4,
  critical: true,
  oneWayFt: 8,
  gauge: 12,
  protect: classT(6),
});
const w = motor({ name: "windlass", runningA: 80, startingA: 140, continuous: false });
circuit({ ...rails, name: "windlass cable", to: w, oneWayFt: 18, gauge: "1/0", protect: classT(100) });
