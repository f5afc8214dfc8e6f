import { battery, build, cable, circuit, disconnect, motor, shoreCharger } from "loomwright";

// A golf cart of 48 V: four equal packs in series and one charger across all of them.
build({ name: "cart of four packs", voltage: 48, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const packs = ["first", "second", "third", "fourth"].map((name) =>
  battery({
    name,
    chemistry: "LiFePO4",
    nominalV: 12,
    capacityAh: 100,
    internalMilliohm: 6,
    maxDischargeA: 150,
    maxChargeA: 50,
  }),
);
const [first, second, third, fourth] = packs as [
  (typeof packs)[0],
  (typeof packs)[0],
  (typeof packs)[0],
  (typeof packs)[0],
];
cable({ name: "link one", from: first.positive, to: second.negative, lengthFt: 1, gauge: 2 });
cable({ name: "link two", from: second.positive, to: third.negative, lengthFt: 1, gauge: 2 });
cable({ name: "link three", from: third.positive, to: fourth.negative, lengthFt: 1, gauge: 2 });
const off = disconnect({ name: "key switch", ratedA: 200 });
cable({
  name: "pack plus",
  from: fourth.positive,
  to: off.line,
  lengthFt: 2,
  gauge: 2,
  protect: classT(125),
});
circuit({
  name: "drive",
  from: off.load,
  returnTo: first.negative,
  to: motor({ name: "drive motor", runningA: 80, startingA: 90 }),
  oneWayFt: 4,
  gauge: 2,
});
const charger = shoreCharger({ name: "charger", outputA: 15, outputV: 57.6 });
cable({
  name: "charger plus",
  from: charger.positive,
  to: fourth.positive,
  lengthFt: 3,
  gauge: 10,
  protectFarEnd: classT(25),
});
cable({ name: "charger minus", from: charger.negative, to: first.negative, lengthFt: 3, gauge: 10 });
