import { battery, build, cable, circuit, disconnect, relay } from "loomwright";

// A boat: 30 ft of 8 AWG between stern and bow battery without a fuse.
// Expected: error protection/unprotected-path at stern link or bow link
// Because: 33 CFR 183.455(a): each conductor has a device at each source.
build({ name: "bow link unfused", voltage: 12, insulationC: 105, installedIn: "boat" });
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
const bow = battery({
  name: "bow battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 600,
  maxChargeA: 40,
});
const join = relay({ name: "bow relay", ratedA: 100 });
cable({ name: "stern link", from: bank.positive, to: join.line, lengthFt: 2, gauge: 8 });
cable({ name: "bow link", from: join.load, to: bow.positive, lengthFt: 30, gauge: 8 });
cable({ name: "bow minus", from: bow.negative, to: bank.negative, lengthFt: 30, gauge: 8 });
const bowOff = disconnect({ name: "bow switch", ratedA: 300 });
cable({
  name: "bow plus",
  from: bow.positive,
  to: bowOff.line,
  lengthFt: 2,
  gauge: "2/0",
  protect: classT(250),
});
circuit({
  name: "thruster",
  from: bowOff.load,
  returnTo: bow.negative,
  load: 180,
  continuous: false,
  oneWayFt: 3,
  gauge: "2/0",
});
