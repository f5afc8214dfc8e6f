import { battery, build, cable, circuit, dcDcCharger, disconnect, fusePanel } from "loomwright";

// A 24 V bus: the 12 V converter gives 20 A, and its lamps and pump ask for 31 A.
// Expected: warning charger/output-current at 12 V converter
// Because: Nameplate: 20 A; the circuits behind it draw 31 A together.
// May follow: error voltage/collapse at 12 V converter or lamps or pump
build({ name: "converter overloaded", voltage: 24, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const half = {
  chemistry: "AGM",
  nominalV: 12,
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 40,
} as const;
const lower = battery({ ...half, name: "lower battery" });
const upper = battery({ ...half, name: "upper battery" });
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
cable({ name: "series link", from: lower.positive, to: upper.negative, lengthFt: 1, gauge: 2 });
cable({
  name: "bank to switch",
  from: upper.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
const feed = { from: mainSwitch.load, returnTo: lower.negative } as const;
const down = dcDcCharger({
  name: "12 V converter",
  outputA: 20,
  outputV: 13,
  inputMinV: 20,
  isolated: true,
  runs: "always",
});
circuit({
  ...feed,
  name: "converter input",
  to: down,
  oneWayFt: 3,
  gauge: 8,
  protect: { ...classT, ratingA: 30, distanceIn: 5 },
});
const panel = fusePanel({ name: "12 V panel", positions: 4, ratedA: 60, branchRatedA: 30 });
cable({ name: "converter plus", from: down.outputPositive, to: panel.feed, lengthFt: 2, gauge: 8 });
cable({ name: "converter minus", from: down.outputNegative, to: panel.negative, lengthFt: 2, gauge: 8 });
circuit({ name: "lamps", voltage: 12, from: panel.branch, load: 15, oneWayFt: 6, gauge: 10, protect: 20 });
circuit({ name: "pump", voltage: 12, from: panel.branch, load: 16, oneWayFt: 6, gauge: 10, protect: 20 });
