import {
  alternator,
  battery,
  build,
  busBar,
  cable,
  chassis,
  circuit,
  disconnect,
  fusePanel,
  load,
  starterMotor,
} from "loomwright";

// An old lorry: the starter, a lamp and the panel return through the frame.
build({ name: "chassis return", voltage: 12 });
const bank = battery({ name: "battery", chemistry: "flooded lead-acid", capacityAh: 110 });
const frame = chassis({ name: "frame", milliohm: 1 });
cable({ name: "battery to frame", from: bank.negative, to: frame.bond, lengthM: 0.5, mm2: 50 });
const engine = alternator({ name: "alternator", ratedA: 70 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: bank.positive,
  lengthM: 1.5,
  mm2: 16,
  protectFarEnd: 80,
});
cable({ name: "alternator to frame", from: engine.negative, to: frame.metal, lengthM: 0.3, mm2: 16 });
const starter = starterMotor({ name: "starter", crankingA: 200 });
cable({ name: "starter plus", from: bank.positive, to: starter.positive, lengthM: 1.5, mm2: 50 });
cable({ name: "starter to frame", from: starter.negative, to: frame.metal, lengthM: 0.2, mm2: 50 });
const mainSwitch = disconnect({ name: "main switch", ratedA: 100 });
const plus = busBar({ name: "plus bus", side: "positive" });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthM: 1,
  mm2: 16,
  protect: 80,
});
cable({ name: "switch to bus", from: mainSwitch.load, to: plus.stud, lengthM: 1, mm2: 16 });
const panel = fusePanel({ name: "cab panel", positions: 8 });
cable({ name: "panel feed", from: plus.stud, to: panel.feed, lengthM: 2, mm2: 10, protect: 50 });
cable({ name: "panel to frame", from: panel.negative, to: frame.metal, lengthM: 0.5, mm2: 10 });
const beam = load({ name: "work light", currentA: 8 });
cable({ name: "work light plus", from: plus.stud, to: beam.positive, lengthM: 5, mm2: 2.5, protect: 10 });
cable({ name: "work light to frame", from: beam.negative, to: frame.metal, lengthM: 0.3, mm2: 2.5 });
circuit({ name: "cab lamps", from: panel.branch, load: 3, oneWayM: 4, mm2: 1.5, protect: 5 });
circuit({ name: "horn", from: panel.branch, load: 6, oneWayM: 4, mm2: 2.5, protect: 10 });
