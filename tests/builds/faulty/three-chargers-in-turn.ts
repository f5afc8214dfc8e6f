import { battery, build, busBar, cable, circuit, dcDcCharger, disconnect } from "loomwright";

// A barge with three banks: each charger takes from one and gives to the next, all the time.
// Expected: error charger/circle at house to bow or bow to engine or engine to house
// Because: Common practice (no source): the charge goes round, and each charger loses a tenth of it.
build({ name: "barge with three banks", voltage: 12, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 200,
  internalMilliohm: 3,
  maxDischargeA: 300,
  maxChargeA: 40,
});
const bow = battery({
  name: "bow battery",
  chemistry: "AGM",
  capacityAh: 100,
  internalMilliohm: 5,
  maxDischargeA: 300,
  maxChargeA: 30,
});
const engine = battery({
  name: "engine battery",
  chemistry: "AGM",
  capacityAh: 90,
  internalMilliohm: 5,
  maxDischargeA: 400,
  maxChargeA: 30,
});
const minus = busBar({ name: "minus bar", side: "negative", ratedA: 250, studs: 10 });
cable({ name: "house minus", from: bank.negative, to: minus.stud, lengthFt: 2, gauge: 2 });
cable({ name: "bow minus", from: bow.negative, to: minus.stud, lengthFt: 4, gauge: 2 });
cable({ name: "engine minus", from: engine.negative, to: minus.stud, lengthFt: 4, gauge: 2 });
const turn = [
  ["house", bank, "bow", bow],
  ["bow", bow, "engine", engine],
  ["engine", engine, "house", bank],
] as const;
for (const [from, source, to, target] of turn) {
  const charger = dcDcCharger({
    name: `${from} to ${to}`,
    outputA: 10,
    outputV: 14.2,
    inputMinV: 10.5,
    runs: "always",
  });
  circuit({
    name: `${from} to ${to} feed`,
    from: source.positive,
    returnTo: minus.stud,
    to: charger,
    oneWayFt: 3,
    gauge: 8,
    protect: classT(25),
  });
  cable({
    name: `${from} to ${to} plus`,
    from: charger.outputPositive,
    to: target.positive,
    lengthFt: 3,
    gauge: 8,
    protectFarEnd: classT(25),
  });
}
const off = disconnect({ name: "main switch", ratedA: 150 });
cable({ name: "house plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 4, protect: classT(100) });
circuit({
  name: "cabin lamps",
  from: off.load,
  returnTo: minus.stud,
  load: 4,
  oneWayFt: 12,
  gauge: 12,
  protect: classT(10),
});
