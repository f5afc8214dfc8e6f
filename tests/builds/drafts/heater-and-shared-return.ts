import { battery, build, busBar, cable, circuit, disconnect } from "loomwright";

// A first draft of a sauna trailer: heater and lamps share one long return.
build({ name: "sauna trailer", voltage: 12 });
const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100 });
const off = disconnect({ name: "switch", ratedA: 100 });
const minus = busBar({ name: "far minus", studs: 4 });
cable({ name: "plus", from: bank.positive, to: off.line, lengthM: 1, mm2: 16, protect: 80 });
cable({ name: "shared return", from: minus.stud, to: bank.negative, lengthM: 6, mm2: 10 });
circuit({
  name: "heater",
  from: off.load,
  returnTo: minus.stud,
  load: 18,
  oneWayM: 7,
  mm2: 2.5,
  protect: 20,
});
circuit({ name: "lamps", from: off.load, returnTo: minus.stud, load: 3, oneWayM: 5, mm2: 1.5, protect: 5 });
