import { battery, build, cable, circuit, disconnect, motor, scenario } from "loomwright";

// A salvage punt: only the lamp is on in the one scenario, and the 90 A winch hangs on 14 AWG.
// Expected: error conductor/ampacity at winch cable
// Because: 33 CFR 183.425(b), Table 5: 14 AWG may carry 35 A; a scenario in which the winch is off does not make its wire thicker.
// May follow: error protection/below-load at winch cable
// May follow: warning conductor/voltage-drop at winch cable
build({ name: "scenario hides motor", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 40,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 6 },
});
const fromSwitch = { from: mainSwitch.load, returnTo: bank.negative } as const;
const winch = motor({ name: "winch", runningA: 90, startingA: 150 });
circuit({
  ...fromSwitch,
  name: "winch cable",
  to: winch,
  oneWayFt: 4,
  gauge: 14,
  protect: { ...classT, ratingA: 30, distanceIn: 5 },
});
const lamp = circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
scenario({ name: "at night", on: [lamp] });
