import { battery, build, cable, circuit, disconnect, inverter } from "loomwright";

// A camper van: the manual of the inverter names 110 A, and the cable allowed 200 A.
// Expected: warning protection/permitted-fuse at inverter pair or inverter
// Because: The maker's limit: the fuse that its manual names protects the inverter's own terminals and board.
build({ name: "camper van", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "LiFePO4",
  capacityAh: 150,
  internalMilliohm: 4,
  maxDischargeA: 150,
  maxChargeA: 75,
});
const off = disconnect({ name: "switch", ratedA: 200 });
cable({
  name: "bank plus",
  from: bank.positive,
  to: off.line,
  lengthFt: 2,
  gauge: "1/0",
  protect: classT(200),
});
const small = inverter({ name: "inverter", continuousW: 800, cutOffV: 11, maxFuseA: 110 });
circuit({
  name: "inverter pair",
  from: off.load,
  returnTo: bank.negative,
  to: small,
  oneWayFt: 4,
  gauge: "1/0",
  protect: classT(200),
});
