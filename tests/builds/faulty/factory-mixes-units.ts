import { type AwgSize, battery, build, cable, circuit, disconnect, type Mm2Size } from "loomwright";

// A horse lorry of 24 V: one helper takes AWG, the other mm², and the heater got the wrong one.
// Expected: error conductor/ampacity at stall heater
// Because: ISO 13297, Annex A: 4 mm² may carry 40 A at 90 °C, and the heater draws 70 A; 4 AWG was meant.
// May follow: error protection/above-conductor at stall heater
// May follow: warning conductor/voltage-drop at stall heater
// May follow: warning protection/does-not-clear at stall heater
build({ name: "horse lorry", voltage: 24, insulationC: 90, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  nominalV: 24,
  capacityAh: 150,
  internalMilliohm: 8,
  maxDischargeA: 400,
  maxChargeA: 40,
});
const off = disconnect({ name: "switch", ratedA: 200 });
const rails = { from: off.load, returnTo: bank.negative } as const;
const inAwg = (name: string, load: number, gauge: AwgSize, ratingA: number) =>
  circuit({ ...rails, name, load, oneWayM: 4, gauge, protect: classT(ratingA) });
const metric = (name: string, load: number, mm2: Mm2Size, ratingA: number) =>
  circuit({ ...rails, name, load, oneWayM: 4, mm2, protect: classT(ratingA) });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthM: 0.6, mm2: 50, protect: classT(175) });
inAwg("groom's lamps", 3, 14, 6);
inAwg("tail lift pump", 40, 6, 60);
metric("stall heater", 70, 4, 90);
