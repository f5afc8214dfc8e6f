import { battery, build, cable, circuit, disconnect, fuseHolder } from "loomwright";

// A scoreboard on one battery.
build({ name: "race scoreboard", voltage: 12, insulationC: 105 });
const bank = battery({
  name: "bank",
  chemistry: "AGM",
  capacityAh: 55,
  internalMilliohm: 7,
  maxDischargeA: 150,
});
const main = fuseHolder({
  name: "main fuse",
  ratingA: 30,
  family: "UL 248-15 Class T",
  interruptingA: 20_000,
  ratedV: 125,
  on: bank.positive,
});
const off = disconnect({ name: "switch", ratedA: 50 });
cable({ name: "plus", from: main.load, to: off.line, lengthFt: 1, gauge: 10 });
circuit({
  name: "board",
  from: off.load,
  returnTo: bank.negative,
  loadW: 150,
  minimumV: 10.5,
  oneWayFt: 8,
  gauge: 10,
});
