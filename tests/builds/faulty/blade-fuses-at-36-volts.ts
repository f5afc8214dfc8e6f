import { battery, build, cable, circuit, disconnect, fusePanel } from "loomwright";

// A golf cart of 36 V: the lamps' fuse panel is the usual one for cars.
// Expected: error protection/voltage-rating at head lamps
// Because: 33 CFR 183.455(d) and ISO 8820-3: a blade fuse of 32 V may fail to interrupt at 36 V, and the charger holds 43 V.
// May follow: error protection/voltage-rating at dash
build({ name: "golf cart", voltage: 36, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "flooded lead-acid",
  nominalV: 36,
  capacityAh: 180,
  internalMilliohm: 12,
  maxDischargeA: 300,
  maxChargeA: 30,
});
const off = disconnect({ name: "switch", ratedA: 100 });
const panel = fusePanel({ name: "panel", positions: 4, ratedA: 60, branchRatedA: 30 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 6, protect: classT(60) });
cable({ name: "panel plus", from: off.load, to: panel.feed, lengthFt: 2, gauge: 6 });
cable({ name: "panel minus", from: panel.negative, to: bank.negative, lengthFt: 3, gauge: 6 });
circuit({
  name: "head lamps",
  from: panel.branch,
  load: 3,
  oneWayFt: 8,
  gauge: 14,
  protect: { ratingA: 5, family: "ISO 8820-3 Type C", ratedV: 32 },
});
circuit({
  name: "dash",
  from: panel.branch,
  load: 1,
  oneWayFt: 6,
  gauge: 14,
  protect: { ratingA: 3, family: "ISO 8820-3 Type C", ratedV: 32 },
});
