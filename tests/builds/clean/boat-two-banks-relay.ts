import { alternator, battery, build, cable, circuit, disconnect, relay } from "loomwright";

// A boat with two banks and a charging relay.
build({ name: "boat two banks relay", voltage: 12, insulationC: 105, installedIn: "boat" });
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
const start = battery({
  name: "start",
  chemistry: "AGM",
  capacityAh: 90,
  internalMilliohm: 5,
  maxDischargeA: 600,
  maxChargeA: 60,
});
const engine = alternator({ name: "alternator", ratedA: 60 });
cable({
  name: "alternator plus",
  from: engine.positive,
  to: start.positive,
  lengthFt: 4,
  gauge: 4,
  protectFarEnd: classT(80),
});
cable({ name: "alternator minus", from: engine.negative, to: start.negative, lengthFt: 4, gauge: 4 });
const join = relay({ name: "charging relay", ratedA: 140 });
cable({
  name: "start to relay",
  from: start.positive,
  to: join.line,
  lengthFt: 2,
  gauge: 4,
  protect: classT(100),
});
cable({ name: "common minus", from: start.negative, to: bank.negative, lengthFt: 3, gauge: 4 });
cable({
  name: "relay to bank",
  from: join.load,
  to: bank.positive,
  lengthFt: 6,
  gauge: 4,
  protectFarEnd: classT(100),
});
circuit({
  name: "bilge pump",
  from: bank.positive,
  returnTo: bank.negative,
  load: 4,
  critical: true,
  oneWayFt: 8,
  gauge: 12,
  protect: classT(6),
});
