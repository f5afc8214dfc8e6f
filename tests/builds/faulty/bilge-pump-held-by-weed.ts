import { battery, build, cable, circuit, disconnect, motor } from "loomwright";

// A day boat: the bilge pump's manual names a fuse of 6 A, and 15 A was at hand.
// Expected: warning protection/permitted-fuse at bilge pump pair or bilge pump
// Because: The maker's limit: with its rotor held by weed the pump draws less than 15 A need to open, and it burns.
build({ name: "day boat", voltage: 12, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "flooded lead-acid",
  capacityAh: 75,
  shortCircuitA: 1500,
  maxDischargeA: 300,
  maxChargeA: 40,
});
const off = disconnect({ name: "switch", ratedA: 100 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 6, protect: classT(80) });
const pump = motor({
  name: "bilge pump",
  runningA: 3,
  startingA: 9,
  startingS: 0.1,
  critical: true,
  maxFuseA: 6,
});
circuit({
  name: "bilge pump pair",
  from: bank.positive,
  returnTo: bank.negative,
  to: pump,
  oneWayFt: 10,
  gauge: 14,
  protect: classT(15),
});
circuit({
  name: "side lamps",
  from: off.load,
  returnTo: bank.negative,
  load: 2,
  oneWayFt: 14,
  gauge: 14,
  critical: true,
  protect: classT(3),
});
