import { battery, build, cable, circuit, disconnect, inverter } from "loomwright";

// A coffee cart: a 1,500 W inverter on a lithium battery that gives 100 A.
// Expected: warning battery/discharge-current at bank
// Because: Data sheet: at most 100 A; 1,500 W at 90 % and 11 V are 152 A.
build({ name: "bank too weak", voltage: 12, insulationC: 105 });

const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 } as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 200,
  internalMilliohm: 4,
  maxDischargeA: 100,
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
const brewer = inverter({ name: "inverter", continuousW: 1500, efficiencyPercent: 90, cutOffV: 11 });
circuit({
  ...fromSwitch,
  name: "inverter supply",
  to: brewer,
  oneWayFt: 3,
  gauge: "1/0",
  protect: { ...classT, ratingA: 200, distanceIn: 5 },
});
