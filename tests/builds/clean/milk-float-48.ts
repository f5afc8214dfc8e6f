import {
  battery,
  build,
  cable,
  circuit,
  disconnect,
  fuseHolder,
  motor,
  relay,
  shoreCharger,
} from "loomwright";

// A milk float of 48 V: eight batteries of 6 V in series, and a motor behind a contactor.
build({ name: "milk float", voltage: 48, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const batteries = [1, 2, 3, 4, 5, 6, 7, 8].map((number) =>
  battery({
    name: `battery ${number}`,
    chemistry: "flooded lead-acid",
    nominalV: 6,
    capacityAh: 240,
    internalMilliohm: 1.8,
    maxDischargeA: 400,
    maxChargeA: 45,
  }),
);
const first = batteries[0]!;
const last = batteries[7]!;
for (const [index, one] of batteries.entries()) {
  const next = batteries[index + 1];
  if (next)
    cable({ name: `link ${index + 1}`, from: one.positive, to: next.negative, lengthFt: 0.8, gauge: "1/0" });
}
const main = fuseHolder({
  name: "main fuse",
  ratingA: 200,
  family: "UL 248-15 Class T",
  interruptingA: 20_000,
  ratedV: 125,
  on: last.positive,
});
const off = disconnect({ name: "isolator", ratedA: 250, momentaryA: 500 });
cable({ name: "main plus", from: main.load, to: off.line, lengthFt: 3, gauge: "1/0", continuous: false });
const contactor = relay({ name: "contactor", ratedA: 250, momentaryA: 500 });
const drive = motor({ name: "drive", runningA: 110, startingA: 300, startingS: 1, continuous: false });
cable({
  name: "to contactor",
  from: off.load,
  to: contactor.line,
  lengthFt: 2,
  gauge: "1/0",
  continuous: false,
});
cable({
  name: "drive plus",
  from: contactor.load,
  to: drive.positive,
  lengthFt: 5,
  gauge: "1/0",
  continuous: false,
});
cable({
  name: "drive minus",
  from: drive.negative,
  to: first.negative,
  lengthFt: 6,
  gauge: "1/0",
  continuous: false,
});
circuit({
  name: "lamps",
  from: off.load,
  returnTo: first.negative,
  load: 2,
  oneWayFt: 10,
  gauge: 14,
  protect: classT(3),
});
const charger = shoreCharger({ name: "charger", outputA: 30, outputV: 58 });
cable({
  name: "charger plus",
  from: charger.positive,
  to: main.load,
  lengthFt: 3,
  gauge: 8,
  protectFarEnd: classT(40),
});
cable({ name: "charger minus", from: charger.negative, to: first.negative, lengthFt: 3, gauge: 8 });
