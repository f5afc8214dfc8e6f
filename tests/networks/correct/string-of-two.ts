import { battery, build, cable, circuit, disconnect } from "loomwright";

build({ voltage: 24, insulationC: 105 });
const upper = battery({ chemistry: "gel", nominalV: 12, capacityAh: 80, internalMilliohm: 7 });
const lower = battery({ chemistry: "gel", nominalV: 12, capacityAh: 80, internalMilliohm: 7 });
cable({ name: "series link", from: lower.positive, to: upper.negative, lengthFt: 1, gauge: 4 });
const off = disconnect({ name: "main disconnect", ratedA: 100 });
cable({
  name: "to the disconnect",
  from: upper.positive,
  to: off.line,
  lengthFt: 2,
  gauge: 4,
  protect: { ratingA: 80, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20_000 },
});
circuit({
  name: "winch radio",
  from: off.load,
  returnTo: lower.negative,
  load: 20,
  oneWayFt: 12,
  gauge: 8,
  protect: { ratingA: 30, family: "UL 248-15 Class T", distanceIn: 4, interruptingA: 20_000 },
});
