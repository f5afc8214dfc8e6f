import { battery, build, cable, chassis, circuit, disconnect } from "loomwright";

// A vintage trailer: the frame is the return, and its bolted joints have rusted.
// Expected: warning conductor/voltage-drop at brake pump
// Because: 33 CFR and ISO 10133, 4.8: 3 % at most on the way to a device that people depend on; 15 A through 40 mΩ of frame are 5 %.
build({ name: "vintage trailer", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 60,
  internalMilliohm: 7,
  maxDischargeA: 200,
  maxChargeA: 15,
});
const off = disconnect({ name: "switch", ratedA: 60 });
const frame = chassis({ name: "frame", milliohm: 40 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 1, gauge: 6, protect: classT(60) });
cable({ name: "bond", from: bank.negative, to: frame.bond, lengthFt: 1, gauge: 6 });
circuit({
  name: "brake pump",
  from: off.load,
  returnTo: frame.metal,
  load: 15,
  continuous: false,
  critical: true,
  positiveFt: 8,
  negativeFt: 0.5,
  gauge: 6,
  protect: classT(25),
});
