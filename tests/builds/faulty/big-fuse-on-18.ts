import { battery, build, cable, circuit, disconnect } from "loomwright";

// A cabin: the reading lamp shares the fuse rating of the winch.
// Expected: error protection/above-conductor at reading lamp
// Because: IEC 60364-4-43, 433.1: the rating is at most the ampacity; 18 AWG may carry 20 A.
build({ name: "big fuse on 18", voltage: 12, insulationC: 105, installedIn: "boat" });
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
  name: "reading lamp",
  load: 0.5,
  sheathed: true,
  oneWayFt: 8,
  gauge: 18,
  protect: classT(30),
});
