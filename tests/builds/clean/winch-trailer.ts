import { battery, build, cable, disconnect, motor } from "loomwright";

// A boat trailer's winch: every cable written out, 4 AWG behind the largest strip fuse that it permits.
build({ name: "winch trailer", voltage: 12, insulationC: 105 });

const bank = battery({
  name: "battery",
  chemistry: "flooded lead-acid",
  capacityAh: 70,
  shortCircuitA: 1500,
  maxDischargeA: 300,
});
const mainSwitch = disconnect({ name: "battery switch", ratedA: 250 });
const winch = motor({ name: "winch", runningA: 110, startingA: 210, continuous: false });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: mainSwitch.line,
  lengthFt: 1.5,
  gauge: 4,
  protect: { ratingA: 150, family: "ISO 8820-5 Type SF 30", distanceIn: 6 },
});
cable({ name: "switch to winch", from: mainSwitch.load, to: winch.positive, lengthFt: 6, gauge: 4 });
cable({ name: "winch return", from: winch.negative, to: bank.negative, lengthFt: 7, gauge: 4 });
