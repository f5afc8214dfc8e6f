import { battery, build, cable, circuit, disconnect, fusePanel, starterMotor } from "loomwright";

// A cruiser: the feed of the house panel is taken from the stud of the starter motor, and has no fuse there.
// Expected: error protection/unprotected-path at house feed
// Because: 33 CFR 183.455(a), 183.460(a): only the main feed of the starter itself is exempt.
// May follow: error protection/unprotected-path at lamps
// May follow: error protection/return-conductor at house minus
// May follow: error protection/interrupting at lamps
// May follow: error protection/interrupting at radio
build({ name: "cruiser", voltage: 12, insulationC: 105, installedIn: "boat" });
const bank = battery({
  name: "bank",
  chemistry: "flooded lead-acid",
  capacityAh: 110,
  internalMilliohm: 4,
  maxDischargeA: 700,
  maxChargeA: 60,
});
const off = disconnect({ name: "engine switch", ratedA: 300 });
const starter = starterMotor({ name: "starter", crankingA: 300, minimumV: 8 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: "1/0" });
cable({ name: "starter plus", from: off.load, to: starter.positive, lengthFt: 4, gauge: "1/0" });
cable({ name: "starter minus", from: starter.negative, to: bank.negative, lengthFt: 4, gauge: "1/0" });
const panel = fusePanel({ name: "panel", positions: 6, ratedA: 60, branchFamily: "ISO 8820-3 Type C" });
cable({ name: "house feed", from: starter.positive, to: panel.feed, lengthFt: 9, gauge: 8 });
cable({ name: "house minus", from: panel.negative, to: bank.negative, lengthFt: 9, gauge: 8 });
circuit({ name: "lamps", from: panel.branch, load: 3, oneWayFt: 10, gauge: 14, protect: 5 });
circuit({ name: "radio", from: panel.branch, load: 5, oneWayFt: 6, gauge: 14, protect: 10 });
