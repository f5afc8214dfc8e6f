import { battery, build, cable, circuit, disconnect, fusePanel, load, motor, scenario } from "loomwright";

// Faulty on purpose: the way from the bank to the last pump is long, and in one scenario there is no voltage at which
// everything could run. Do not build any of this.
build({ name: "pumping station", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, distanceIn: 6 } as const;
const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 200, internalMilliohm: 4 });
const off = disconnect({ name: "main disconnect", ratedA: 200 });
cable({
  name: "bank cable",
  from: bank.positive,
  to: off.line,
  lengthFt: 2,
  gauge: 1,
  protect: { ...classT, ratingA: 150 },
});

// scenario/device-below-minimum: the pump runs well, but while it starts less is left than it needs.
const pump = motor({ name: "well pump", runningA: 12, startingA: 70, minimumV: 11 });
circuit({
  name: "well pump supply",
  from: off.load,
  returnTo: bank.negative,
  to: pump,
  oneWayFt: 12,
  gauge: 6,
  protect: { ...classT, ratingA: 60 },
});
scenario({ name: "the pump starts", on: [pump], starting: [pump] });

// voltage/collapse: at the end of this run no voltage is left at which 900 W could be drawn.
const heater = load({ name: "trough heater", powerW: 900, dropLimitPercent: 20 });
circuit({
  name: "trough heater supply",
  from: off.load,
  returnTo: bank.negative,
  to: heater,
  oneWayFt: 120,
  gauge: 4,
  protect: { ...classT, ratingA: 125 },
  accept: {
    "protection/does-not-clear": "Broken on its own by the tower beacon in the yard.",
    "conductor/voltage-drop": "Broken on its own in the workshop; here it is why nothing arrives.",
  },
});
scenario({ name: "the heater on", on: [heater] });

// scenario/never-on: no scenario has the lamp on, nor the pump for longer than its start.
const panel = fusePanel({
  name: "panel",
  positions: 4,
  accept: { "protection/interrupting": "Broken on its own by the forge alarm in the yard." },
});
circuit({
  name: "panel feeder",
  from: off.load,
  returnTo: bank.negative,
  to: panel,
  oneWayFt: 3,
  gauge: 4,
  protect: { ...classT, ratingA: 80 },
});
circuit({ name: "yard lamp", from: panel.branch, load: 2, oneWayFt: 10, gauge: 14, protect: 5 });
