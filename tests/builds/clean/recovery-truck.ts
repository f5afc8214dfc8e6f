import { battery, build, cable, chassis, circuit, disconnect, motor } from "loomwright";

// A recovery truck's rear: 12 V, lamps and a winch that return through the frame, which is bonded in one place.
build({ name: "recovery truck", voltage: 12, insulationC: 105 });

const bank = battery({
  name: "rear battery",
  chemistry: "flooded lead-acid",
  capacityAh: 90,
  shortCircuitA: 1600,
  maxDischargeA: 400,
});
const frame = chassis({ name: "frame", milliohm: 0.4 });
const mainSwitch = disconnect({ name: "rear switch", ratedA: 300 });
cable({ name: "frame bond", from: bank.negative, to: frame.bond, lengthFt: 1.5, gauge: "1/0" });
// 2 AWG may carry 210 A: no larger strip fuse than this one suits it.
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 2,
  protect: { ratingA: 200, family: "ISO 8820-5 Type SF 51", distanceIn: 6 },
});
const winch = motor({ name: "winch", runningA: 140, startingA: 320, continuous: false });
circuit({
  name: "winch cable",
  from: mainSwitch.load,
  returnTo: frame.metal,
  to: winch,
  positiveFt: 9,
  negativeFt: 2,
  gauge: 2,
});
const strip = (ratingA: number) => ({ ratingA, family: "ISO 8820-5 Type SF 30", distanceIn: 6 }) as const;
circuit({
  name: "beacon",
  from: mainSwitch.load,
  returnTo: frame.metal,
  load: 8,
  positiveFt: 14,
  negativeFt: 1,
  gauge: 10,
  protect: strip(30),
});
circuit({
  name: "work lamps",
  from: mainSwitch.load,
  returnTo: frame.metal,
  load: 16,
  positiveFt: 16,
  negativeFt: 1,
  gauge: 8,
  protect: strip(30),
});
