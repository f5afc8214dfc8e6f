import { battery, build, cable, circuit, disconnect, fusePanel } from "loomwright";

// A stage truck: each branch has the right fuse, and together they draw more than the main fuse carries.
// Expected: error protection/below-load at battery to switch
// Because: IEC 60364-4-43, 433.1: the rating is at least the load; four branches of 18 A are 72 A through a 60 A fuse.
build({ name: "main fuse below sum", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 60,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
const panel = fusePanel({ name: "panel", positions: 6, ratedA: 100, branchRatedA: 30 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 4,
  protect: { ...classT, ratingA: 60, distanceIn: 6 },
});
cable({ name: "switch to panel", from: mainSwitch.load, to: panel.feed, lengthFt: 3, gauge: 4 });
cable({ name: "panel minus", from: panel.negative, to: bank.negative, lengthFt: 5, gauge: 4 });
for (const side of ["one", "two", "three", "four"])
  circuit({
    name: `lamp bar ${side}`,
    from: panel.branch,
    load: 18,
    oneWayFt: 6,
    gauge: 10,
    protect: { ...classT, ratingA: 25 },
  });
