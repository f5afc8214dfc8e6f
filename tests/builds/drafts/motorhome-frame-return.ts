import { battery, build, cable, chassis, circuit, disconnect, inverter, motor } from "loomwright";

// A first draft of a motorhome: everything returns through the frame, over one thin strap.
build({ name: "frame motorhome", voltage: 12, installedIn: "vehicle" });
const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 200 });
const off = disconnect({ name: "switch", ratedA: 200 });
const frame = chassis({ name: "frame", milliohm: 0.5 });
cable({ name: "plus", from: bank.positive, to: off.line, lengthFt: 3, gauge: 4, protect: 100 });
cable({ name: "strap", from: bank.negative, to: frame.bond, lengthFt: 2, gauge: 8 });
const box = inverter({ name: "inverter", continuousW: 1000 });
circuit({
  name: "inverter pair",
  from: off.load,
  returnTo: frame.metal,
  to: box,
  positiveFt: 8,
  negativeFt: 1,
  gauge: 6,
  protect: 80,
});
const jack = motor({ name: "levelling jacks", runningA: 60, startingA: 120, continuous: false });
circuit({
  name: "jack pair",
  from: off.load,
  returnTo: frame.metal,
  to: jack,
  positiveFt: 18,
  negativeFt: 1,
  gauge: 8,
  protect: 60,
});
circuit({
  name: "lamps",
  from: off.load,
  returnTo: frame.metal,
  load: 6,
  positiveFt: 20,
  negativeFt: 1,
  gauge: 16,
  protect: 20,
});
circuit({
  name: "step",
  from: off.load,
  returnTo: frame.metal,
  load: 10,
  continuous: false,
  positiveFt: 15,
  negativeFt: 1,
  gauge: 14,
  protect: 10,
});
