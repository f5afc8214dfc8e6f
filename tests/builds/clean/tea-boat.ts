import { battery, build, cable, circuit, disconnect, fuseHolder, fusePanel } from "loomwright";

// A tea boat: 12 V lithium and a blade panel whose maker tested its fuses behind the main fuse, and says so.
build({ name: "tea boat", voltage: 12, insulationC: 105 });

const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 100,
});
const mainFuse = fuseHolder({
  name: "main fuse",
  on: bank.positive,
  ratingA: 80,
  family: "UL 248-15 Class T",
  interruptingA: 20_000,
  ratedV: 125,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 100 });
const panel = fusePanel({ name: "fuse panel", positions: 6, ratedA: 80, branchRatedA: 30 });
cable({ name: "fuse to switch", from: mainFuse.load, to: mainSwitch.line, lengthFt: 1, gauge: 4 });
cable({ name: "switch to panel", from: mainSwitch.load, to: panel.feed, lengthFt: 2, gauge: 4 });
cable({ name: "panel return", from: panel.negative, to: bank.negative, lengthFt: 3, gauge: 4 });

const blade = (ratingA: number) =>
  ({
    ratingA,
    family: "ISO 8820-3 Type C",
    testedBehind: { family: "UL 248-15 Class T", ratingA: 100, interruptingA: 10_000 },
  }) as const;
circuit({
  name: "urn pump",
  from: panel.branch,
  load: 6,
  continuous: false,
  oneWayFt: 8,
  gauge: 12,
  protect: blade(10),
});
circuit({ name: "awning lamps", from: panel.branch, load: 3, oneWayFt: 14, gauge: 14, protect: blade(5) });
circuit({ name: "cool box", from: panel.branch, load: 5, oneWayFt: 6, gauge: 14, protect: blade(7.5) });
