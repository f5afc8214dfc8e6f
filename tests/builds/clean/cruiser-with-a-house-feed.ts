import { battery, build, cable, circuit, disconnect, fusePanel, starterMotor } from "loomwright";

// A cruiser with one bank: the engine's feed needs no fuse, the house's feed has one at the battery.
build({ name: "cruiser with a feed", voltage: 12, insulationC: 105, installedIn: "boat" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "flooded lead-acid",
  capacityAh: 180,
  internalMilliohm: 4,
  maxDischargeA: 900,
  maxChargeA: 60,
});
const engineOff = disconnect({ name: "engine switch", ratedA: 300, momentaryA: 900 });
const houseOff = disconnect({ name: "house switch", ratedA: 100 });
const starter = starterMotor({ name: "starter", crankingA: 300, minimumV: 8 });
cable({ name: "engine plus", from: bank.positive, to: engineOff.line, lengthFt: 2, gauge: "1/0" });
cable({ name: "starter plus", from: engineOff.load, to: starter.positive, lengthFt: 4, gauge: "1/0" });
cable({ name: "starter minus", from: starter.negative, to: bank.negative, lengthFt: 4, gauge: "1/0" });
const panel = fusePanel({
  name: "panel",
  positions: 6,
  ratedA: 60,
  branchFamily: "ISO 8820-3 Type C",
  testedBehind: { family: "UL 248-15 Class T", ratingA: 60, interruptingA: 10_000 },
});
cable({
  name: "house plus",
  from: bank.positive,
  to: houseOff.line,
  lengthFt: 2,
  gauge: 6,
  protect: classT(60),
});
cable({ name: "house feed", from: houseOff.load, to: panel.feed, lengthFt: 5, gauge: 6 });
cable({ name: "house minus", from: panel.negative, to: bank.negative, lengthFt: 6, gauge: 6 });
circuit({ name: "lamps", from: panel.branch, load: 3, oneWayFt: 10, gauge: 14, protect: 5 });
circuit({ name: "radio", from: panel.branch, load: 5, oneWayFt: 6, gauge: 14, protect: 7.5 });
circuit({
  name: "bilge pump",
  from: bank.positive,
  returnTo: bank.negative,
  load: 5,
  oneWayFt: 8,
  gauge: 12,
  protect: classT(10),
});
