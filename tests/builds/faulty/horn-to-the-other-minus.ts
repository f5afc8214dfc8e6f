import { battery, build, cable, circuit, disconnect, motor } from "loomwright";

// A boat with two separate systems: the horn is fed by the house bank, and its return is on the engine battery.
// Expected: error network/no-return at horn
// Because: Kirchhoff's current law: the two banks have no common minus, so that no current can return to the house bank.
build({ name: "lug sailer", voltage: 12, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const house = battery({
  name: "house",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 200,
  maxChargeA: 30,
});
const engine = battery({
  name: "engine battery",
  chemistry: "flooded lead-acid",
  capacityAh: 60,
  internalMilliohm: 6,
  maxDischargeA: 400,
  maxChargeA: 30,
});
const houseOff = disconnect({ name: "house switch", ratedA: 100 });
const engineOff = disconnect({ name: "engine switch", ratedA: 200 });
cable({
  name: "house plus",
  from: house.positive,
  to: houseOff.line,
  lengthFt: 2,
  gauge: 4,
  protect: classT(100),
});
cable({
  name: "engine plus",
  from: engine.positive,
  to: engineOff.line,
  lengthFt: 2,
  gauge: 2,
  protect: classT(150),
});
const preheater = motor({ name: "fuel pump", runningA: 4, startingA: 8, startingS: 0.1 });
circuit({
  name: "fuel pump pair",
  from: engineOff.load,
  returnTo: engine.negative,
  to: preheater,
  oneWayFt: 6,
  gauge: 12,
  protect: classT(10),
});
circuit({
  name: "cabin lamps",
  from: houseOff.load,
  returnTo: house.negative,
  load: 4,
  oneWayFt: 12,
  gauge: 14,
  protect: classT(6),
});
circuit({
  name: "horn",
  from: houseOff.load,
  returnTo: engine.negative,
  load: 6,
  continuous: false,
  oneWayFt: 12,
  gauge: 12,
  protect: classT(10),
});
