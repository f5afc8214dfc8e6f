import { battery, build, cable, circuit, disconnect } from "loomwright";

// A shed wired from memory: no fuse anywhere.
build({ name: "no fuses at all", voltage: 12 });

const bank = battery({ name: "battery", chemistry: "flooded lead-acid", capacityAh: 80 });
const mainSwitch = disconnect({ name: "switch", ratedA: 100 });
cable({ name: "plus", from: bank.positive, to: mainSwitch.line, lengthFt: 4, gauge: 8 });
for (const lamp of ["door", "bench", "loft"])
  circuit({
    name: `${lamp} lamp`,
    from: mainSwitch.load,
    returnTo: bank.negative,
    load: 2,
    oneWayFt: 20,
    gauge: 16,
  });
circuit({
  name: "heater fan",
  from: mainSwitch.load,
  returnTo: bank.negative,
  load: 12,
  oneWayFt: 15,
  gauge: 14,
});
