import {
  alternator,
  battery,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  fusePanel,
  motor,
  scenario,
  shunt,
} from "loomwright";

// Two batteries side by side, a shunt in the return of both, and a windlass fed past the panel.
build({ name: "small boat", voltage: 12, insulationC: 105 });
const fuse = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const port = battery({ name: "port battery", chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 });
const starboard = battery({
  name: "starboard battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
});
const meter = shunt({ name: "shunt", ratedA: 300 });
const mainSwitch = disconnect({ name: "battery switch", ratedA: 200 });
const plus = busBar({ name: "positive bus", side: "positive", ratedA: 200 });
const minus = busBar({ name: "negative bus", side: "negative", ratedA: 200 });
const panel = fusePanel({ name: "cabin panel", positions: 8, ratedA: 60 });
const engine = alternator({ name: "alternator", ratedA: 60 });
const windlass = motor({ name: "windlass", runningA: 70, startingA: 180, continuous: false });

cable({ name: "positive link", from: port.positive, to: starboard.positive, lengthFt: 1, gauge: 2 });
cable({ name: "negative link", from: port.negative, to: starboard.negative, lengthFt: 1, gauge: 2 });
cable({
  name: "bank to switch",
  from: port.positive,
  to: mainSwitch.line,
  lengthFt: 3,
  gauge: 1,
  protect: { ...fuse, ratingA: 150, distanceIn: 6 },
});
cable({ name: "switch to bus", from: mainSwitch.load, to: plus.stud, lengthFt: 2, gauge: 1 });
cable({ name: "bank to shunt", from: starboard.negative, to: meter.batterySide, lengthFt: 2, gauge: 1 });
cable({ name: "shunt to bus", from: meter.systemSide, to: minus.stud, lengthFt: 2, gauge: 1 });
circuit({
  name: "windlass supply",
  from: plus.stud,
  returnTo: minus.stud,
  to: windlass,
  oneWayFt: 20,
  gauge: 1,
  protect: { ...fuse, ratingA: 110, distanceIn: 6 },
});
circuit({
  name: "panel feeder",
  from: plus.stud,
  returnTo: minus.stud,
  to: panel,
  oneWayFt: 6,
  gauge: 6,
  protect: { ...fuse, ratingA: 60, distanceIn: 6 },
});
circuit({
  name: "bilge pump",
  from: port.positive,
  returnTo: minus.stud,
  load: 5,
  oneWayFt: 9,
  gauge: 12,
  protect: 7.5,
});
circuit({ name: "lamps", from: panel.branch, load: 3, oneWayFt: 14, gauge: 14, protect: 5 });
circuit({ name: "radio", from: panel.branch, load: 5, oneWayFt: 9, gauge: 12, protect: 7.5 });
circuit({ name: "sounder", from: panel.branch, load: 1, oneWayFt: 12, gauge: 16, protect: 2 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: plus.stud,
  lengthFt: 6,
  gauge: 4,
  protectFarEnd: { ...fuse, ratingA: 80, distanceIn: 6 },
});
cable({ name: "alternator minus", from: engine.negative, to: minus.stud, lengthFt: 6, gauge: 4 });
scenario({ name: "hauling", on: [windlass] });
