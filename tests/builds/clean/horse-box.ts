import {
  alternator,
  battery,
  build,
  cable,
  chassis,
  circuit,
  disconnect,
  fusePanel,
  relay,
} from "loomwright";

// A horse box: the lorry's battery, a leisure battery of the same kind behind a charging relay, lamps for the horses.
build({ name: "horse box", voltage: 12, insulationC: 90, installedIn: "vehicle" });

const strip = { family: "ISO 8820-5 Type SF 30", ratedV: 32 } as const;
const frame = chassis({ name: "frame", milliohm: 0.3 });
const lorry = battery({
  name: "lorry battery",
  chemistry: "flooded lead-acid",
  capacityAh: 110,
  internalMilliohm: 14,
  maxDischargeA: 700,
  maxChargeA: 90,
});
const leisure = battery({
  name: "leisure battery",
  chemistry: "flooded lead-acid",
  capacityAh: 110,
  internalMilliohm: 14,
  maxDischargeA: 200,
  maxChargeA: 90,
});
const engine = alternator({ name: "alternator", ratedA: 90, outputV: 14.2 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: lorry.positive,
  lengthM: 1.5,
  mm2: 50,
  engineSpace: true,
  protectFarEnd: { ...strip, ratingA: 125, distanceMm: 150 },
});
cable({
  name: "alternator minus",
  from: engine.negative,
  to: frame.metal,
  lengthM: 0.5,
  mm2: 50,
  engineSpace: true,
});
cable({ name: "lorry earth", from: lorry.negative, to: frame.metal, lengthM: 0.5, mm2: 50 });

const split = relay({ name: "split charge relay", ratedA: 120 });
cable({
  name: "lorry to relay",
  from: lorry.positive,
  to: split.line,
  lengthM: 1,
  mm2: 25,
  protect: { ...strip, ratingA: 80, distanceMm: 150 },
});
cable({
  name: "relay to leisure",
  from: split.load,
  to: leisure.positive,
  lengthM: 4,
  mm2: 25,
  protectFarEnd: { ...strip, ratingA: 80, distanceMm: 150 },
});
cable({ name: "leisure earth", from: leisure.negative, to: frame.metal, lengthM: 0.5, mm2: 25 });

const off = disconnect({ name: "leisure switch", ratedA: 100 });
const panel = fusePanel({
  name: "living panel",
  positions: 6,
  ratedA: 60,
  branchRatedA: 20,
  negativeBus: false,
});
cable({
  name: "leisure to switch",
  from: leisure.positive,
  to: off.line,
  lengthM: 0.5,
  mm2: 10,
  protect: { ...strip, ratingA: 40, distanceMm: 120 },
});
cable({ name: "switch to panel", from: off.load, to: panel.feed, lengthM: 2, mm2: 10 });
const branch = { from: panel.branch, returnTo: leisure.negative } as const;
const blade = { family: "ISO 8820-3 Type C" } as const;
circuit({ ...branch, name: "stall lamps", load: 3, oneWayM: 6, mm2: 2.5, protect: { ...blade, ratingA: 5 } });
circuit({
  ...branch,
  name: "living lamps",
  load: 2,
  oneWayM: 3,
  mm2: 1.5,
  protect: { ...blade, ratingA: 3 },
});
circuit({
  ...branch,
  name: "water pump",
  load: 5,
  continuous: false,
  oneWayM: 4,
  mm2: 2.5,
  protect: { ...blade, ratingA: 7.5 },
});
circuit({
  ...branch,
  name: "horse camera",
  load: 1,
  oneWayM: 7,
  mm2: 1.5,
  protect: { ...blade, ratingA: 2 },
});
