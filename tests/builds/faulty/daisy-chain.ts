import { battery, build, cable, circuit, disconnect } from "loomwright";

// A workboat: four batteries in a row, and both leads at the first.
// Expected: warning battery/parallel-imbalance at battery a
// Because: Common practice: identical leads to each; the first gives most of the current.
// May follow: error battery/links at minus 1
build({ name: "daisy chain", voltage: 12, insulationC: 105 });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const row = ["a", "b", "c", "d"].map((n) =>
  battery({
    name: `battery ${n}`,
    chemistry: "AGM",
    capacityAh: 100,
    internalMilliohm: 4,
    maxDischargeA: 300,
  }),
);
for (let i = 1; i < row.length; i++) {
  cable({
    name: `plus ${i}`,
    from: row[i - 1]!.positive,
    to: row[i]!.positive,
    lengthFt: 1,
    gauge: 4,
    protect: classT(150),
  });
  cable({ name: `minus ${i}`, from: row[i - 1]!.negative, to: row[i]!.negative, lengthFt: 1, gauge: 4 });
}
const off = disconnect({ name: "switch", ratedA: 250 });
cable({
  name: "plus",
  from: row[0]!.positive,
  to: off.line,
  lengthFt: 2,
  gauge: "1/0",
  protect: classT(250),
});
circuit({
  name: "winch",
  from: off.load,
  returnTo: row[0]!.negative,
  load: 160,
  continuous: false,
  oneWayFt: 5,
  gauge: 1,
  protect: classT(225),
});
