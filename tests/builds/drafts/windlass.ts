import { battery, build, cable, circuit, disconnect, motor } from "loomwright";

// A windlass on jump leads.
build({ name: "windlass", voltage: 12, insulationC: 105 });

const bank = battery({ name: "battery", chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 });
const batterySwitch = disconnect({ name: "battery switch", ratedA: 150 });
cable({
  name: "battery to switch",
  from: bank.positive,
  to: batterySwitch.line,
  lengthFt: 3,
  gauge: 6,
  protect: 100,
});
const windlass = motor({ name: "windlass", runningA: 80, startingA: 200, minimumV: 9.5, continuous: false });
circuit({
  name: "windlass cable",
  from: batterySwitch.load,
  returnTo: bank.negative,
  to: windlass,
  oneWayFt: 26,
  gauge: 6,
  protect: 60,
});
