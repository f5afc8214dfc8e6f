import { battery, build, cable, circuit, disconnect, motor } from "loomwright";

// A golf cart of 48 V: four packs of 12 V in series, and the third gives 50 A only.
// Expected: error battery/discharge-current at third
// Because: Maker's limit: all packs in series give the same current, 80 A; the protection that opens then has the voltage of the string across it.
build({ name: "golf cart with a spare pack", voltage: 48, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const packs = ["first", "second", "third", "fourth"].map((name) =>
  battery({
    name,
    chemistry: "LiFePO4",
    nominalV: 12,
    capacityAh: 100,
    internalMilliohm: 6,
    maxDischargeA: name === "third" ? 50 : 150,
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
