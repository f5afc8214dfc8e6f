import { battery, build, cable, circuit, disconnect } from "loomwright";

// A boat of a builder who names things in German: the bilge pump is behind the battery switch.
// Expected: info disconnect/bilge-pump at Lenzpumpe
// Because: Common practice: an automatic bilge pump is fed ahead of the main switch.
build({ name: "lenzpumpe", voltage: 12, insulationC: 105, installedIn: "boat" });
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
circuit({
  ...rails,
  name: "Lenzpumpe",
  load: 4,
  purpose: "bilge pump",
  oneWayFt: 8,
  gauge: 12,
  protect: classT(6),
});
