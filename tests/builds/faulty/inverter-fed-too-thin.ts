import { battery, build, cable, circuit, disconnect, inverter } from "loomwright";

// A recording van: 1,000 W through a fuse and wire made for 80 A.
// Expected: warning inverter/supply at inverter supply or inverter
// Because: Nameplate: 1,000 W at 90 % and its cut-off of 10.5 V are 106 A; the fuse is 80 A.
// May follow: error protection/below-load at inverter supply
// May follow: warning protection/headroom at inverter supply
build({ name: "inverter fed too thin", voltage: 12, insulationC: 105 });

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
const studio = inverter({ name: "inverter", continuousW: 1000, efficiencyPercent: 90, cutOffV: 10.5 });
circuit({
  ...fromSwitch,
  name: "inverter supply",
  to: studio,
  oneWayFt: 3,
  gauge: 2,
  protect: { ...classT, ratingA: 80, distanceIn: 5 },
});
