import { battery, build, cable, circuit, dcDcCharger, disconnect, fusePanel } from "loomwright";

// A cabin of 48 V with a converter to 12 V: a small buffer battery hangs on the panel without a fuse.
// Expected: error protection/unprotected-path at buffer plus
// Because: 33 CFR 183.455(b) and 183.460(a): a battery's positive conductor has a device near the battery.
// May follow: error protection/unprotected-path at buffer switched
build({ name: "river cabin", voltage: 48, insulationC: 105, installedIn: "building" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const pack = battery({
  name: "pack",
  chemistry: "LiFePO4",
  nominalV: 48,
  capacityAh: 100,
  internalMilliohm: 15,
  maxDischargeA: 100,
  maxChargeA: 50,
});
const off = disconnect({ name: "switch", ratedA: 100 });
cable({ name: "pack plus", from: pack.positive, to: off.line, lengthFt: 2, gauge: 4, protect: classT(80) });
const converter = dcDcCharger({
  name: "converter",
  outputA: 30,
  outputV: 13.8,
  inputMinV: 42,
  isolated: true,
  runs: "always",
});
circuit({
  name: "converter feed",
  from: off.load,
  returnTo: pack.negative,
  to: converter,
  oneWayFt: 3,
  gauge: 10,
  protect: classT(20),
});
const panel = fusePanel({ name: "12 V panel", positions: 6, ratedA: 60, branchRatedA: 20 });
cable({
  name: "converter plus",
  from: converter.outputPositive,
  to: panel.feed,
  lengthFt: 2,
  gauge: 6,
  protectFarEnd: classT(50),
});
cable({ name: "converter minus", from: converter.outputNegative, to: panel.negative, lengthFt: 2, gauge: 6 });
const buffer = battery({
  name: "buffer",
  chemistry: "AGM",
  nominalV: 12,
  capacityAh: 20,
  internalMilliohm: 15,
  maxDischargeA: 100,
  maxChargeA: 30,
});
const bufferOff = disconnect({ name: "buffer switch", ratedA: 60 });
cable({ name: "buffer plus", from: buffer.positive, to: bufferOff.line, lengthFt: 3, gauge: 6 });
cable({ name: "buffer switched", from: bufferOff.load, to: panel.feed, lengthFt: 1, gauge: 6 });
cable({ name: "buffer minus", from: buffer.negative, to: panel.negative, lengthFt: 3, gauge: 6 });
circuit({
  name: "lamps",
  voltage: 12,
  from: panel.branch,
  load: 6,
  oneWayFt: 12,
  gauge: 12,
  protect: classT(10),
});
