import { battery, build, cable, circuit, disconnect, inverter } from "loomwright";

// A lithium bank whose data sheet was lost: nobody says how much it may give.
// Expected: info battery/discharge-current at bank
// Because: Common practice: many lithium batteries cut off at 0.5 to 1 C; the inverter here asks for 0.9 C.
build({ name: "discharge limit unknown", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 100,
  internalMilliohm: 4,
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
const small = inverter({ name: "inverter", continuousW: 900, efficiencyPercent: 90, cutOffV: 11 });
circuit({
  ...fromSwitch,
  name: "inverter supply",
  to: small,
  oneWayFt: 3,
  gauge: 2,
  protect: { ...classT, ratingA: 125, distanceIn: 5 },
});
