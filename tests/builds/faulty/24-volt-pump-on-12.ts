import { battery, build, cable, circuit, disconnect, motor } from "loomwright";

// A boat of 12 V with a pump for 24 V from a lorry.
// Expected: error plan/invalid-value at pump
// Because: No clause needed: a device that needs 21 V does not run on 12 V.
build({ name: "24 volt pump on 12", voltage: 12, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 400,
  maxChargeA: 40,
});
const off = disconnect({ name: "battery switch", ratedA: 200 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 2, protect: classT(150) });
const rails = { from: off.load, returnTo: bank.negative } as const;
circuit({ ...rails, name: "lamps", load: 3, oneWayFt: 10, gauge: 14, protect: classT(6) });
const pump = motor({ name: "pump", runningA: 6, startingA: 15, minimumV: 21 });
circuit({ ...rails, name: "pump cable", to: pump, oneWayFt: 8, gauge: 12, protect: classT(10) });
