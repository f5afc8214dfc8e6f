import {
  alternator,
  battery,
  build,
  cable,
  chassis,
  circuit,
  disconnect,
  fuseHolder,
  fusePanel,
  motor,
  relay,
  starterMotor,
} from "loomwright";

// A narrowboat with a bow thruster: its own battery in the bow, charged through a relay over long thick cables.
build({ name: "bow thruster narrowboat", voltage: 12, insulationC: 105, installedIn: "boat" });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const agm = {
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 4,
  maxDischargeA: 800,
  maxChargeA: 80,
} as const;
const hull = chassis({ name: "hull", milliohm: 0.05 });

const start = battery({ ...agm, name: "engine battery" });
const engineSwitch = disconnect({ name: "engine switch", ratedA: 300 });
const starter = starterMotor({ name: "starter", crankingA: 220, minimumV: 8 });
cable({ name: "engine plus", from: start.positive, to: engineSwitch.line, lengthM: 0.6, mm2: 70 });
cable({
  name: "starter plus",
  from: engineSwitch.load,
  to: starter.positive,
  lengthM: 1.5,
  mm2: 70,
  engineSpace: true,
});
cable({
  name: "starter minus",
  from: starter.negative,
  to: hull.metal,
  lengthM: 0.3,
  mm2: 70,
  engineSpace: true,
});
cable({ name: "engine minus", from: start.negative, to: hull.metal, lengthM: 0.5, mm2: 70 });
const engine = alternator({ name: "alternator", ratedA: 70, outputV: 14.2 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: start.positive,
  lengthM: 1.5,
  mm2: 25,
  engineSpace: true,
  protectFarEnd: { ...classT, ratingA: 90, distanceMm: 150 },
});
cable({
  name: "alternator minus",
  from: engine.negative,
  to: hull.metal,
  lengthM: 0.3,
  mm2: 25,
  engineSpace: true,
});

const bow = battery({ ...agm, name: "bow battery" });
const bowFuse = fuseHolder({
  name: "thruster fuse",
  ratingA: 300,
  ...classT,
  on: bow.positive,
  continuous: false,
});
const bowSwitch = disconnect({ name: "bow switch", ratedA: 300 });
const thruster = motor({
  name: "bow thruster",
  runningA: 210,
  startingA: 280,
  startingS: 0.5,
  minimumV: 9.5,
  continuous: false,
});
cable({ name: "bow plus", from: bowFuse.load, to: bowSwitch.line, lengthM: 0.5, mm2: 95, continuous: false });
cable({
  name: "thruster plus",
  from: bowSwitch.load,
  to: thruster.positive,
  lengthM: 1,
  mm2: 95,
  continuous: false,
});
cable({
  name: "thruster minus",
  from: thruster.negative,
  to: bow.negative,
  lengthM: 1.5,
  mm2: 95,
  continuous: false,
});

// 13 m from the engine to the bow, two of them; the relay opens while the thruster runs on its own battery.
const charge = relay({ name: "bow charging relay", ratedA: 120 });
cable({
  name: "stern to relay",
  from: start.positive,
  to: charge.line,
  lengthM: 1,
  mm2: 50,
  protect: { ...classT, ratingA: 100, distanceMm: 150 },
});
cable({
  name: "relay to bow",
  from: charge.load,
  to: bow.positive,
  lengthM: 13,
  mm2: 50,
  protectFarEnd: { ...classT, ratingA: 100, distanceMm: 150 },
});
cable({ name: "bow return", from: bow.negative, to: start.negative, lengthM: 14, mm2: 50 });

const off = disconnect({ name: "cabin switch", ratedA: 100 });
const panel = fusePanel({ name: "cabin panel", positions: 6, ratedA: 60, branchRatedA: 20 });
cable({
  name: "start to cabin",
  from: start.positive,
  to: off.line,
  lengthM: 0.8,
  mm2: 16,
  protect: { ...classT, ratingA: 50, distanceMm: 150 },
});
cable({ name: "cabin plus", from: off.load, to: panel.feed, lengthM: 3, mm2: 16 });
cable({ name: "cabin minus", from: panel.negative, to: start.negative, lengthM: 4, mm2: 16 });
circuit({
  name: "cabin lamps",
  from: panel.branch,
  load: 4,
  oneWayM: 8,
  mm2: 4,
  protect: { ...classT, ratingA: 6 },
});
circuit({
  name: "tunnel lamp",
  from: panel.branch,
  load: 5,
  oneWayM: 14,
  mm2: 6,
  protect: { ...classT, ratingA: 10 },
});
