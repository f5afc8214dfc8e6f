import { battery, build, cable, circuit, disconnect, fusePanel, load, motor } from "loomwright";

// A sailing boat whose cabin lamps were wired with the cable of the anchor winch, which the panel's clamps do not take.
// Expected: error conductor/terminal-size at cabin lamps
// Because: The panel's maker states 10 AWG (5.26 mm²) for a branch; 4 AWG is 21.2 mm² (ASTM B258). No strand is cut off to make a
//   conductor fit (common practice).
build({ name: "cable too thick for its panel", voltage: 12, insulationC: 105 });

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
  branchLargestGauge: 10,
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
circuit({ ...fromPanel, name: "cabin lamps", load: 1.5, oneWayFt: 10, gauge: 4, protect: 5 });
