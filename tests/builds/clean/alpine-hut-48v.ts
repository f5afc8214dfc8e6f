import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  dcDcCharger,
  disconnect,
  fuseHolder,
  fusePanel,
  inverter,
  solarArray,
  solarController,
} from "loomwright";

// An off-grid hut: 48 V lithium for an alternating-current inverter, modules on the roof with an isolator, lamps on 12 V.
build({ name: "alpine hut", voltage: 48, insulationC: 90, installedIn: "building", lowestC: -25 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const pack = battery({
  name: "pack",
  chemistry: "LiFePO4",
  nominalV: 51.2,
  capacityAh: 100,
  internalMilliohm: 20,
  maxDischargeA: 100,
  maxChargeA: 60,
  lowestC: 5,
});
const packFuse = fuseHolder({ name: "pack fuse", ratingA: 110, ...classT, on: pack.positive });
const off = disconnect({ name: "main isolator", ratedA: 150 });
const plus = busBar({ name: "plus rail", side: "positive", ratedA: 150, studs: 5 });
const minus = busBar({ name: "minus rail", side: "negative", ratedA: 150, studs: 6 });
cable({ name: "fuse to isolator", from: packFuse.load, to: off.line, lengthM: 0.5, mm2: 35 });
cable({ name: "isolator to rail", from: off.load, to: plus.stud, lengthM: 0.5, mm2: 35 });
cable({ name: "pack minus", from: pack.negative, to: minus.stud, lengthM: 1, mm2: 35 });

const rails = { from: plus.stud, returnTo: minus.stud } as const;
const mains = inverter({
  name: "inverter",
  continuousW: 2500,
  surgeW: 4000,
  loadW: 2000,
  efficiencyPercent: 93,
  idleW: 18,
  cutOffV: 44,
});
circuit({
  ...rails,
  name: "inverter pair",
  to: mains,
  oneWayM: 1.2,
  mm2: 25,
  protect: { ...classT, ratingA: 90, distanceMm: 120 },
});

const roof = solarArray({
  name: "roof modules",
  openCircuitV: 38,
  shortCircuitA: 10.5,
  maxPowerV: 31.5,
  maxPowerA: 9.8,
  series: 3,
});
const sun = solarController({ name: "tracker", maxInputV: 150, outputA: 35, outputV: 56.8 });
const roofSwitch = disconnect({ name: "roof isolator", ratedA: 25 });
cable({ name: "roof plus", from: roof.positive, to: roofSwitch.line, lengthM: 6, mm2: 6 });
cable({ name: "tracker in", from: roofSwitch.load, to: sun.solarPositive, lengthM: 1, mm2: 6 });
cable({ name: "roof minus", from: roof.negative, to: sun.solarNegative, lengthM: 7, mm2: 6 });
cable({
  name: "tracker plus",
  from: sun.positive,
  to: plus.stud,
  lengthM: 1.5,
  mm2: 10,
  protectFarEnd: { ...classT, ratingA: 45, distanceMm: 120 },
});
cable({ name: "tracker minus", from: sun.negative, to: minus.stud, lengthM: 1.5, mm2: 10 });

const small = dcDcCharger({
  name: "12 V converter",
  outputA: 20,
  outputV: 13,
  inputMinV: 40,
  isolated: true,
  runs: "always",
});
circuit({
  ...rails,
  name: "converter feed",
  to: small,
  oneWayM: 1,
  mm2: 4,
  protect: { ...classT, ratingA: 15, distanceMm: 120 },
});
const lamps = fusePanel({ name: "lamp panel", positions: 6, ratedA: 40, branchRatedA: 15 });
cable({ name: "lamp plus", from: small.outputPositive, to: lamps.feed, lengthM: 1, mm2: 6 });
cable({ name: "lamp minus", from: small.outputNegative, to: lamps.negative, lengthM: 1, mm2: 6 });
const blade = { family: "ISO 8820-3 Type C" } as const;
for (const room of ["kitchen", "dormitory", "porch"])
  circuit({
    name: `${room} lamps`,
    from: lamps.branch,
    load: 1.5,
    oneWayM: 8,
    mm2: 1.5,
    protect: { ...blade, ratingA: 3 },
  });
circuit({
  name: "radio",
  from: lamps.branch,
  load: 4,
  oneWayM: 3,
  mm2: 1.5,
  protect: { ...blade, ratingA: 7.5 },
});
