import { battery, build, cable, circuit, disconnect } from "loomwright";

// An engine blower whose fuse is outside the engine space.
build({ name: "hot engine fuse outside", voltage: 12, insulationC: 105, installedIn: "boat" });
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
  name: "engine blower",
  load: 8,
  critical: true,
  oneWayFt: 8,
  gauge: 10,
  ambientC: 60,
  protect: { ...classT(10), ambientC: 30 },
});
