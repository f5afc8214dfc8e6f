import {
  battery,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  fusePanel,
  load,
  motor,
  scenario,
  shoreCharger,
} from "loomwright";

// A small sailing boat with an outboard: one AGM battery, a charger for the shore, and a bilge pump ahead of the main switch.
// Every figure is invented. Put in those of your own parts, and measure your own lengths along the real route.
build({ name: "my boat", voltage: 12, insulationC: 105 });

const house = battery({
  name: "house battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 25,
});
const mainSwitch = disconnect({ name: "battery switch", ratedA: 150 });
const negativeBus = busBar({ name: "negative bus", side: "negative", ratedA: 150, studs: 6 });
const panel = fusePanel({
  name: "cabin panel",
  positions: 10,
  ratedA: 60,
  branchRatedA: 20,
  branchFamily: "ISO 8820-3 Type C",
  // The blade fuses of a panel cannot interrupt the short of this battery alone. Ask the maker of yours for the tested fuse ahead of it.
  testedBehind: { family: "UL 248-15 Class T", ratingA: 60, interruptingA: 10_000 },
});

/** A family of fuses that interrupts the short of this battery. */
const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;

cable({
  name: "battery to switch",
  from: house.positive,
  to: mainSwitch.line,
  lengthFt: 3,
  gauge: 6,
  sheathed: true,
  protect: { ...classT, ratingA: 60, distanceIn: 6 },
});
cable({ name: "switch to panel", from: mainSwitch.load, to: panel.feed, lengthFt: 4, gauge: 6 });
cable({ name: "panel return", from: panel.negative, to: negativeBus.stud, lengthFt: 2, gauge: 6 });
cable({ name: "battery return", from: house.negative, to: negativeBus.stud, lengthFt: 3, gauge: 6 });

// Ahead of the switch, with a fuse of its own: it pumps while the boat lies alone.
const bilge = motor({ name: "bilge pump", runningA: 4, startingA: 9, critical: true });
circuit({
  name: "bilge pump supply",
  from: house.positive,
  returnTo: negativeBus.stud,
  to: bilge,
  oneWayFt: 8,
  gauge: 12,
  protect: { ...classT, ratingA: 10, distanceIn: 7 },
});

/** Common to the circuits of the panel: both conductors in one sheath. */
const fromPanel = { from: panel.branch, sheathed: true } as const;

// Devices that must work in any weather keep within 3 % drop.
const sideLamps = circuit({
  ...fromPanel,
  name: "side lamps",
  load: 0.8,
  oneWayFt: 18,
  gauge: 16,
  protect: 3,
  critical: true,
});
const masthead = circuit({
  ...fromPanel,
  name: "masthead lamp",
  load: 0.4,
  oneWayFt: 42,
  gauge: 16,
  protect: 3,
  critical: true,
});
const radio = load({ name: "VHF radio", currentA: 5.5, minimumV: 11, critical: true });
circuit({ ...fromPanel, name: "radio supply", to: radio, oneWayFt: 10, gauge: 10, protect: 7.5 });
const plotter = load({ name: "chart plotter", powerW: 18, minimumV: 10.5, critical: true });
circuit({ ...fromPanel, name: "plotter supply", to: plotter, oneWayFt: 12, gauge: 14, protect: 3 });

const cabinLamps = circuit({
  ...fromPanel,
  name: "cabin lamps",
  load: 1.5,
  oneWayFt: 12,
  gauge: 16,
  protect: 5,
});
const sockets = circuit({ ...fromPanel, name: "sockets", load: 4, oneWayFt: 8, gauge: 14, protect: 7.5 });

// The charger stays on while the boat is in its berth. Its fuse is at the battery's end.
const charger = shoreCharger({ name: "shore charger", outputA: 20, outputV: 14.4 });
circuit({
  name: "charger output",
  from: house.positive,
  returnTo: negativeBus.stud,
  to: charger,
  oneWayFt: 5,
  gauge: 10,
  sheathed: true,
  protect: { ...classT, ratingA: 30, distanceIn: 6 },
});

scenario({ name: "night sail", on: [sideLamps, masthead, radio, plotter, bilge] });
scenario({ name: "at anchor", on: [cabinLamps, sockets, bilge], chargePercent: 60 });
scenario({ name: "in the berth, charging", on: [cabinLamps], shore: true });
