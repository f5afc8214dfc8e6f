import {
  alternator,
  battery,
  build,
  busBar,
  cable,
  circuit,
  dcDcCharger,
  disconnect,
  load,
  motor,
} from "loomwright";

// A timber lorry of 24 V: lamps and pump for 24 V, a converter for the radio.
build({ name: "timber lorry", voltage: 24, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  nominalV: 24,
  capacityAh: 120,
  internalMilliohm: 6,
  maxDischargeA: 400,
  maxChargeA: 60,
});
const off = disconnect({ name: "main switch", ratedA: 150 });
const plus = busBar({ name: "plus bar", side: "positive", ratedA: 150, studs: 8 });
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 150, studs: 8 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 4, protect: classT(100) });
cable({ name: "switched plus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 4 });
cable({ name: "bank minus", from: minus.stud, to: bank.negative, lengthFt: 2, gauge: 4 });
const rails = { from: plus.stud, returnTo: minus.stud } as const;
circuit({
  ...rails,
  name: "work lamps",
  to: load({ name: "lamps", currentA: 8, minimumV: 18 }),
  oneWayFt: 12,
  gauge: 12,
  protect: classT(15),
});
circuit({
  ...rails,
  name: "wash pump wires",
  to: motor({ name: "wash pump", runningA: 5, startingA: 12, minimumV: 20 }),
  oneWayFt: 9,
  gauge: 12,
  protect: classT(15),
});
const converter = dcDcCharger({
  name: "converter",
  outputA: 10,
  outputV: 13.2,
  inputMinV: 20,
  runs: "always",
});
circuit({ ...rails, name: "converter feed", to: converter, oneWayFt: 4, gauge: 12, protect: classT(10) });
circuit({
  name: "radio",
  from: converter.outputPositive,
  returnTo: converter.outputNegative,
  load: 6,
  oneWayFt: 5,
  gauge: 12,
  protect: classT(10),
});
const machine = alternator({ name: "alternator", ratedA: 60, outputV: 28.4, selfLimiting: true });
cable({
  name: "alternator plus",
  from: machine.positive,
  to: bank.positive,
  lengthFt: 4,
  gauge: 4,
  protectFarEnd: classT(80),
});
cable({ name: "alternator minus", from: machine.negative, to: bank.negative, lengthFt: 4, gauge: 4 });
