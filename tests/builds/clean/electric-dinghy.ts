import { battery, build, cable, circuit, disconnect, fuseHolder, motor } from "loomwright";

// A dinghy with an electric outboard: a 48 V lithium battery, a fuse on its terminal, a switch within reach.
build({ name: "electric dinghy", voltage: 48, insulationC: 105 });

const pack = battery({
  name: "pack",
  chemistry: "LiFePO4",
  capacityAh: 60,
  internalMilliohm: 20,
  maxDischargeA: 100,
});
const fuse = fuseHolder({
  name: "pack fuse",
  on: pack.positive,
  ratingA: 100,
  family: "UL 248-15 Class T",
  interruptingA: 20_000,
  ratedV: 125,
});
const killSwitch = disconnect({ name: "kill switch", ratedA: 150 });
cable({ name: "fuse to switch", from: fuse.load, to: killSwitch.line, lengthFt: 2, gauge: 4 });
const drive = motor({ name: "drive motor", runningA: 65, startingA: 75, minimumV: 40 });
circuit({
  name: "motor cable",
  from: killSwitch.load,
  returnTo: pack.negative,
  to: drive,
  oneWayFt: 9,
  gauge: 4,
});
