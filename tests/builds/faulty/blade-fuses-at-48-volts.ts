import { battery, build, cable, circuit, disconnect, fusePanel } from "loomwright";

// A cargo trike: a blade fuse from the car shop, marked 32 V, in a panel on 48 V.
// Expected: error protection/voltage-rating at lamps
// Because: ISO 8820-3: blade fuses are for 32 V; at 48 V the arc in an opening fuse does not go out.
build({ name: "blade fuses at 48 volts", voltage: 48, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "LiFePO4",
  nominalV: 48,
  capacityAh: 50,
  internalMilliohm: 40,
  maxDischargeA: 50,
  maxChargeA: 25,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 100 });
const panel = fusePanel({ name: "panel", positions: 4, ratedA: 60, branchRatedA: 20 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 6,
  protect: { ...classT, ratingA: 40, distanceIn: 6 },
});
cable({ name: "switch to panel", from: mainSwitch.load, to: panel.feed, lengthFt: 2, gauge: 6 });
cable({ name: "panel minus", from: panel.negative, to: bank.negative, lengthFt: 3, gauge: 6 });
circuit({
  name: "lamps",
  from: panel.branch,
  load: 1,
  oneWayFt: 9,
  gauge: 14,
  protect: { family: "ISO 8820-3 Type C", ratingA: 3, ratedV: 32 },
});
circuit({
  name: "pump",
  from: panel.branch,
  load: 3,
  oneWayFt: 7,
  gauge: 14,
  protect: { ...classT, ratingA: 6 },
});
