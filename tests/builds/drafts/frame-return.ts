import { battery, build, cable, chassis, circuit, disconnect } from "loomwright";

// A lorry whose lamps return through the frame, bonded with a thin strap.
build({ name: "lorry", voltage: 12, insulationC: 105 });

const bank = battery({
  name: "battery",
  chemistry: "flooded lead-acid",
  capacityAh: 100,
  shortCircuitA: 1800,
});
const frame = chassis({ name: "frame", milliohm: 1 });
const mainSwitch = disconnect({ name: "switch", ratedA: 150 });
cable({ name: "strap", from: bank.negative, to: frame.bond, lengthFt: 2, gauge: 12 });
cable({ name: "plus", from: bank.positive, to: mainSwitch.line, lengthFt: 3, gauge: 8, protect: 100 });
circuit({
  name: "tail lift",
  from: mainSwitch.load,
  returnTo: frame.metal,
  load: 60,
  continuous: false,
  positiveFt: 18,
  negativeFt: 2,
  gauge: 10,
  protect: 80,
});
circuit({
  name: "work lamps",
  from: mainSwitch.load,
  returnTo: frame.metal,
  load: 15,
  positiveFt: 20,
  negativeFt: 1,
  gauge: 16,
  protect: 30,
});
