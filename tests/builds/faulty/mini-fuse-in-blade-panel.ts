import { battery, build, cable, circuit, disconnect, fusePanel, load, motor } from "loomwright";

// A sailing boat whose cabin lamps have a miniature blade fuse in a panel for medium ones.
// Expected: warning panel/fuse-family at cabin lamps
// Because: ISO 8820-3 names the sizes of blade fuses by type: Type F is the miniature one, Type C the medium one. A blade of another
//   size has no hold in the position (common practice).
build({ name: "mini fuse in a blade panel", voltage: 12, insulationC: 105 });

const bank = battery({
  name: "battery",
  chemistry: "flooded lead-acid",
  capacityAh: 80,
  internalMilliohm: 9,
  maxDischargeA: 200,
});
const mainSwitch = disconnect({ name: "battery switch", ratedA: 100 });
const panel = fusePanel({
  name: "cabin panel",
  positions: 8,
  ratedA: 60,
  branchRatedA: 20,
  branchFamily: "ISO 8820-3 Type C",
});

cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 3,
  gauge: 6,
  sheathed: true,
  protect: { ratingA: 60, family: "ISO 8820-5 Type SF 30", distanceIn: 6 },
});
cable({ name: "switch to panel", from: mainSwitch.load, to: panel.feed, lengthFt: 3, gauge: 6 });
cable({ name: "panel return", from: panel.negative, to: bank.negative, lengthFt: 5, gauge: 6 });

const bilge = motor({ name: "bilge pump", runningA: 3, startingA: 7, critical: true });
circuit({
  name: "bilge pump supply",
  from: bank.positive,
  to: bilge,
  oneWayFt: 7,
  gauge: 14,
  protect: { ratingA: 6, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 7 },
});

const fromPanel = { from: panel.branch, sheathed: true } as const;
circuit({ ...fromPanel, name: "side lamps", load: 0.8, oneWayFt: 16, gauge: 16, protect: 3, critical: true });
circuit({
  ...fromPanel,
  name: "masthead lamp",
  load: 0.4,
  oneWayFt: 38,
  gauge: 16,
  protect: 3,
  critical: true,
});
const plotter = load({ name: "chart plotter", powerW: 15, minimumV: 10.5, critical: true });
circuit({ ...fromPanel, name: "chart plotter supply", to: plotter, oneWayFt: 9, gauge: 14, protect: 3 });
circuit({
  ...fromPanel,
  name: "cabin lamps",
  load: 1.5,
  oneWayFt: 10,
  gauge: 14,
  protect: { ratingA: 5, family: "ISO 8820-3 Type F" },
});
