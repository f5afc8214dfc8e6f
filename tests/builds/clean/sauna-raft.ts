import { battery, build, cable, circuit, disconnect, fuseHolder, fusePanel } from "loomwright";

// A sauna on a raft: 12 V lithium, a blade panel, 105 °C wire, each branch with the largest blade fuse that its wire permits.
build({ name: "sauna raft", voltage: 12, insulationC: 105 });

const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 150,
  internalMilliohm: 6,
  maxDischargeA: 150,
});
const mainFuse = fuseHolder({
  name: "main fuse",
  on: bank.positive,
  ratingA: 100,
  family: "UL 248-15 Class T",
  interruptingA: 20_000,
  ratedV: 125,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
const panel = fusePanel({ name: "fuse panel", positions: 8, ratedA: 100, branchRatedA: 40 });
cable({ name: "fuse to switch", from: mainFuse.load, to: mainSwitch.line, lengthFt: 2, gauge: 4 });
cable({ name: "switch to panel", from: mainSwitch.load, to: panel.feed, lengthFt: 4, gauge: 4 });
cable({ name: "panel return", from: panel.negative, to: bank.negative, lengthFt: 6, gauge: 4 });

const blade = (ratingA: number) => ({ ratingA, family: "ISO 8820-3 Type C" }) as const;
circuit({ name: "deck lamps", from: panel.branch, load: 6, oneWayFt: 15, gauge: 14, protect: blade(35) });
circuit({ name: "stove fan", from: panel.branch, load: 3, oneWayFt: 10, gauge: 16, protect: blade(25) });
circuit({
  name: "anchor winch",
  from: panel.branch,
  load: 30,
  continuous: false,
  oneWayFt: 8,
  gauge: 10,
  protect: blade(40),
});
circuit({
  name: "shower pump",
  from: panel.branch,
  load: 8,
  continuous: false,
  oneWayFt: 9,
  gauge: 12,
  protect: blade(40),
});
