import { battery, build, cable, circuit, disconnect, inverter } from "loomwright";

// A print shop on wheels: 1,500 W through 8 AWG that was there already.
// Expected: error conductor/ampacity at inverter cable
// Because: 33 CFR 183.425(b), Table 5: 8 AWG may carry 80 A; 1,500 W at 90 % and 11 V are 152 A.
// May follow: error protection/above-conductor at inverter cable
// May follow: error voltage/collapse at inverter or inverter cable
// May follow: warning inverter/supply at inverter cable or inverter
// May follow: warning conductor/voltage-drop at inverter cable or inverter
// May follow: error scenario/device-below-minimum at inverter
// May follow: warning protection/does-not-clear at inverter cable
// May follow: warning protection/headroom at bank to switch or inverter cable
build({ name: "inverter cable too thin", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 200,
  internalMilliohm: 4,
  maxDischargeA: 200,
  maxChargeA: 100,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 200 });
cable({
  name: "bank to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: "1/0",
  protect: { ...classT, ratingA: 200, distanceIn: 6 },
});
const fromSwitch = { from: mainSwitch.load, returnTo: bank.negative } as const;
const press = inverter({ name: "inverter", continuousW: 1500, efficiencyPercent: 90, cutOffV: 11 });
circuit({
  ...fromSwitch,
  name: "inverter cable",
  to: press,
  oneWayFt: 9,
  gauge: 8,
  protect: { ...classT, ratingA: 200, distanceIn: 5 },
});
