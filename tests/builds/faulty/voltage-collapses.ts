import { battery, build, cable, circuit, disconnect, load } from "loomwright";

// A frost guard: 900 W at the end of 120 ft.
// Expected: error voltage/collapse at frost heater or frost heater cable
// Because: Physics: the most that 12 V can deliver through this pair is less than 900 W.
// May follow: warning protection/does-not-clear at frost heater cable
// May follow: warning conductor/voltage-drop at frost heater cable
build({ name: "voltage collapses", voltage: 12, insulationC: 105 });

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
const heater = load({ name: "frost heater", powerW: 900, dropLimitPercent: 20 });
circuit({
  ...fromSwitch,
  name: "frost heater cable",
  to: heater,
  oneWayFt: 120,
  gauge: 4,
  protect: { ...classT, ratingA: 125, distanceIn: 5 },
});
circuit({
  ...fromSwitch,
  name: "lamps",
  load: 3,
  oneWayFt: 10,
  gauge: 14,
  protect: { ...classT, ratingA: 6, distanceIn: 5 },
});
