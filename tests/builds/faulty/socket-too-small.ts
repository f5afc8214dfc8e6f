import { battery, build, cable, circuit, disconnect, load, part } from "loomwright";

// A camper: a kettle of 12 V hangs on the small socket beside the bed.
// Expected: warning part/rating at bed socket
// Because: The maker's rating of the socket: 10 A, and the kettle draws 14 A through it.
build({ name: "bed socket", voltage: 12, insulationC: 105, installedIn: "vehicle" });
const classT = (ratingA: number) =>
  ({ ratingA, family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 }) as const;
const bank = battery({
  name: "bank",
  chemistry: "gel",
  capacityAh: 110,
  internalMilliohm: 6,
  maxDischargeA: 200,
  maxChargeA: 25,
});
const off = disconnect({ name: "switch", ratedA: 100 });
cable({ name: "bank plus", from: bank.positive, to: off.line, lengthFt: 2, gauge: 4, protect: classT(80) });
const socket = part({
  name: "bed socket",
  terminals: ["positive", "negative", "outPlus", "outMinus"],
  joins: [{ between: ["positive", "outPlus"] }, { between: ["negative", "outMinus"] }],
  ratedA: 10,
});
circuit({
  name: "socket pair",
  from: off.load,
  returnTo: bank.negative,
  to: socket,
  oneWayFt: 10,
  gauge: 10,
  protect: classT(20),
});
const kettle = load({ name: "kettle", currentA: 14, continuous: false });
cable({ name: "kettle plus", from: socket.outPlus, to: kettle.positive, lengthFt: 3, gauge: 12 });
cable({ name: "kettle minus", from: kettle.negative, to: socket.outMinus, lengthFt: 3, gauge: 12 });
