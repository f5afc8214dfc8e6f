import { battery, build, cable, circuit, disconnect } from "loomwright";

// A first draft of a work van: in-line holders of 15 A everywhere, with the fuses that were in the drawer.
build({ name: "drawer of fuses", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 });
const off = disconnect({ name: "switch", ratedA: 100 });
cable({
  name: "plus",
  from: bank.positive,
  to: off.line,
  lengthFt: 2,
  gauge: 4,
  protect: {
    ratingA: 100,
    family: "UL 248-15 Class T",
    interruptingA: 20_000,
    holderRatedA: 100,
    distanceIn: 5,
  },
});
const rails = { from: off.load, returnTo: bank.negative } as const;
circuit({
  ...rails,
  name: "lamps",
  load: 4,
  oneWayFt: 10,
  gauge: 14,
  protect: { ratingA: 20, holderRatedA: 15 },
});
circuit({
  ...rails,
  name: "compressor",
  load: 18,
  oneWayFt: 6,
  gauge: 14,
  protect: { ratingA: 30, holderRatedA: 15 },
});
circuit({
  ...rails,
  name: "radio",
  load: 3,
  oneWayFt: 8,
  gauge: 16,
  protect: { ratingA: 25, holderRatedA: 15 },
});
