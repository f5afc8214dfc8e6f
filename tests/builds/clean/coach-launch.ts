import { battery, build, cable, circuit, disconnect, fusePanel, motor } from "loomwright";

// A rowing coach's launch: 12 V, one AGM battery; the horn's compressor starts hard, so its blade fuse is the largest for 16 AWG.
build({ name: "coach launch", voltage: 12, insulationC: 105 });

const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 50,
  shortCircuitA: 900,
  maxDischargeA: 150,
});
const mainSwitch = disconnect({ name: "battery switch", ratedA: 100 });
const panel = fusePanel({ name: "helm panel", positions: 6, ratedA: 60, branchRatedA: 40 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 8,
  protect: { ratingA: 80, family: "ISO 8820-5 Type SF 30", distanceIn: 6 },
});
cable({ name: "switch to panel", from: mainSwitch.load, to: panel.feed, lengthFt: 2, gauge: 8 });
cable({ name: "panel return", from: panel.negative, to: bank.negative, lengthFt: 4, gauge: 8 });

const blade = (ratingA: number) => ({ ratingA, family: "ISO 8820-3 Type C" }) as const;
const horn = motor({ name: "horn compressor", runningA: 16, startingA: 40, continuous: false });
circuit({ name: "horn supply", from: panel.branch, to: horn, oneWayFt: 4, gauge: 16, protect: blade(25) });
circuit({
  name: "side lamps",
  from: panel.branch,
  load: 1,
  oneWayFt: 12,
  gauge: 14,
  protect: blade(3),
  critical: true,
});
circuit({ name: "loudhailer", from: panel.branch, load: 4, oneWayFt: 5, gauge: 14, protect: blade(7.5) });
