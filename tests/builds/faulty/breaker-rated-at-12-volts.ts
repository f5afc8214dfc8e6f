import { battery, build, cable, circuit, disconnect } from "loomwright";

// A 48 V sweeper: the data sheet gives 5,000 A for the main breaker at 12 V, and no figure for 48 V, for which it is marked.
// Expected: warning protection/interrupting at pack to switch
// Because: IEC 60364-4-43, 434.5.1: the breaking capacity is that in the circuit; direct current of 48 V has a longer arc than of 12 V.
build({ name: "sweeper", voltage: 48, insulationC: 105 });

const pack = battery({
  name: "pack",
  chemistry: "AGM",
  nominalV: 48,
  capacityAh: 100,
  internalMilliohm: 20,
  maxDischargeA: 300,
});
const mainSwitch = disconnect({ name: "main switch", ratedA: 100 });
cable({
  name: "pack to switch",
  from: pack.positive,
  to: mainSwitch.line,
  lengthFt: 2,
  gauge: 4,
  protect: {
    ratingA: 80,
    family: "circuit breaker",
    interruptingA: 5000,
    interruptingAtV: 12,
    ratedV: 60,
    distanceIn: 6,
  },
});
circuit({
  name: "cabin heater",
  from: mainSwitch.load,
  returnTo: pack.negative,
  load: 15,
  oneWayFt: 6,
  gauge: 10,
  protect: {
    family: "UL 248-15 Class T",
    interruptingA: 20_000,
    ratedV: 125,
    ratingA: 25,
    distanceIn: 5,
  },
});
