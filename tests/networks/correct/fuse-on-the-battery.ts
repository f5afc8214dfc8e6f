import {
  battery,
  breaker,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  fuseHolder,
  fusePanel,
} from "loomwright";

build({ voltage: 12, insulationC: 105 });
const bank = battery({ chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 20 });
// On the terminal itself: no stretch of cable is without a fuse.
const main = fuseHolder({
  ratingA: 150,
  family: "UL 248-15 Class T",
  interruptingA: 20_000,
  ratedV: 125,
  on: bank.positive,
});
const off = disconnect({ ratedA: 200 });
const plus = busBar({ side: "positive", ratedA: 200, studs: 4 });
const minus = busBar({ side: "negative", ratedA: 200, studs: 4 });
cable({ name: "fuse to disconnect", from: main.load, to: off.line, lengthFt: 2, gauge: "1/0" });
cable({ name: "disconnect to bus", from: off.load, to: plus.stud, lengthFt: 1, gauge: "1/0" });
cable({ name: "bank return", from: bank.negative, to: minus.stud, lengthFt: 2, gauge: "1/0" });
// A breaker within reach of the bus bar, which feeds a panel.
const panelBreaker = breaker({ ratingA: 50, interruptingA: 5_000, ratedV: 48 });
const panel = fusePanel({ positions: 6, ratedA: 100, branchRatedA: 30 });
cable({ name: "bus to breaker", from: plus.stud, to: panelBreaker.line, lengthFt: 0.5, gauge: 6 });
cable({ name: "breaker to panel", from: panelBreaker.load, to: panel.feed, lengthFt: 4, gauge: 6 });
cable({ name: "panel return", from: panel.negative, to: minus.stud, lengthFt: 4, gauge: 6 });
circuit({
  name: "lamps",
  from: panel.branch,
  load: 5,
  oneWayFt: 10,
  gauge: 14,
  protect: { ratingA: 10, family: "ISO 8820-3 Type C", ratedV: 32 },
});
// In a position of the panel, in place of a fuse.
const pumpBreaker = breaker({ ratingA: 15, interruptingA: 3_000, ratedV: 48, on: panel.branch });
circuit({
  name: "pump",
  from: pumpBreaker.load,
  returnTo: panel.negative,
  load: 10,
  oneWayFt: 8,
  gauge: 10,
  continuous: false,
});
