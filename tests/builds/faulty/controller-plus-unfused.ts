import { battery, build, cable, circuit, disconnect, solarArray, solarController } from "loomwright";

// A deer hide: the solar controller is wired straight to the battery.
// Expected: error protection/unprotected-path at controller plus
// Because: 33 CFR 183.455(b) and NFPA 70, 690.9: the battery feeds a short in this cable, which has no device at the battery.
build({ name: "deer hide", voltage: 12, insulationC: 105, installedIn: "building", lowestC: -15 });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "gel",
  capacityAh: 60,
  internalMilliohm: 8,
  maxDischargeA: 100,
  maxChargeA: 15,
});
const off = disconnect({ name: "switch", ratedA: 40 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 10, protect: classT(30) });
const roof = solarArray({ name: "roof", openCircuitV: 22, shortCircuitA: 6, maxPowerV: 18, maxPowerA: 5.5 });
const tracker = solarController({ name: "tracker", maxInputV: 75, outputA: 10, outputV: 14.2 });
circuit({
  name: "roof pair",
  from: roof.positive,
  returnTo: roof.negative,
  to: tracker,
  oneWayFt: 10,
  gauge: 12,
});
cable({ name: "controller plus", from: tracker.positive, to: bank.positive, lengthFt: 3, gauge: 12 });
cable({ name: "controller minus", from: tracker.negative, to: bank.negative, lengthFt: 3, gauge: 12 });
circuit({
  name: "lamp",
  from: off.load,
  returnTo: bank.negative,
  load: 1,
  oneWayFt: 8,
  gauge: 14,
  protect: classT(3),
});
