import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// An allotment shed: three circuits have thick wires, and one thin common return.
// Expected: error conductor/ampacity at common return
// Because: 33 CFR 183.425(b), Table 5: 12 AWG may carry 45 A, and 54 A return through it.
// May follow: error protection/return-conductor at common return
build({ name: "allotment shed", voltage: 12, insulationC: 105, installedIn: "building" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "gel",
  capacityAh: 150,
  internalMilliohm: 5,
  maxDischargeA: 250,
  maxChargeA: 30,
});
const off = disconnect({ name: "switch", ratedA: 100 });
const minus = busBar({ name: "shed minus", side: "negative", ratedA: 100, studs: 5 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 4, protect: classT(80) });
cable({ name: "common return", from: minus.stud, to: bank.negative, lengthFt: 3, gauge: 12 });
for (const name of ["pump", "warmer", "bench"])
  circuit({
    name,
    from: off.load,
    returnTo: minus.stud,
    load: 18,
    oneWayFt: 6,
    gauge: 10,
    protect: classT(25),
  });
