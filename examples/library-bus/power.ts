import {
  alternator,
  battery,
  busBar,
  cable,
  chassis,
  circuit,
  dcDcCharger,
  disconnect,
  fusePanel,
  inverter,
  shoreCharger,
  shunt,
  solarArray,
  solarController,
} from "loomwright";
import { open } from "./hours.ts";
import { classT, heavy } from "./sizes.ts";

/** Nobody need believe the figures of this example: take the torque from the maker of your own part. */
const invented = "invented for this example";

// The bank under the driver's floor, and everything that is bolted to its bus bars.
const bank = battery({
  name: "house bank",
  chemistry: "LiFePO4",
  capacityAh: 300,
  internalMilliohm: 2,
  maxDischargeA: 200,
  maxChargeA: 150,
  reservePercent: 20,
  source: invented,
  termination: "M8",
  torqueNm: 12,
});
const mainDisconnect = disconnect({ name: "main disconnect", ratedA: 300, termination: "3/8 in" });
const meter = shunt({ name: "bank shunt", ratedA: 500, termination: "M10" });
export const positiveBus = busBar({
  name: "positive bus",
  side: "positive",
  ratedA: 250,
  studs: 8,
  termination: "5/16 in",
  torqueNm: 10,
  source: invented,
});
export const negativeBus = busBar({
  name: "negative bus",
  side: "negative",
  ratedA: 250,
  studs: 8,
  termination: "5/16 in",
  torqueNm: 10,
  source: invented,
});

cable({
  ...heavy,
  name: "bank to disconnect",
  from: bank.positive,
  to: mainDisconnect.line,
  lengthFt: 2,
  gauge: "2/0",
  protect: { ...classT, ratingA: 250, distanceIn: 6 },
});
cable({
  ...heavy,
  name: "disconnect to bus",
  from: mainDisconnect.load,
  to: positiveBus.stud,
  lengthFt: 2,
  gauge: "2/0",
});
cable({
  ...heavy,
  name: "bank to shunt",
  from: bank.negative,
  to: meter.batterySide,
  lengthFt: 1,
  gauge: "2/0",
});
cable({
  ...heavy,
  name: "shunt to bus",
  from: meter.systemSide,
  to: negativeBus.stud,
  lengthFt: 1,
  gauge: "2/0",
});

/** What every pair from the bus bars has in common. */
const fromBus = { ...heavy, from: positiveBus.stud, returnTo: negativeBus.stud } as const;

export const panel = fusePanel({
  name: "fuse panel",
  positions: 24,
  ratedA: 150,
  branchRatedA: 30,
  termination: "1/4 in",
  branchTermination: "#8",
  // The panel's maker states this for its blade fuses.
  testedBehind: { family: "UL 248-15 Class T", ratingA: 100, interruptingA: 5_000 },
});
circuit({
  ...fromBus,
  name: "panel feeder",
  to: panel,
  oneWayFt: 6,
  gauge: "2/0",
  protect: { ...classT, ratingA: 100, distanceIn: 4 },
});

export const kettleInverter = inverter({
  name: "inverter",
  continuousW: 1_200,
  surgeW: 2_000,
  efficiencyPercent: 90,
  cutOffV: 11,
  idleW: 10,
  use: { ...open, hoursPerDay: 1 },
  devices: [{ name: "kettle", powerW: 1_000, use: { ...open, hoursPerDay: 0.4 } }],
  termination: "5/16 in",
});
circuit({
  ...fromBus,
  name: "inverter supply",
  to: kettleInverter,
  oneWayFt: 5,
  gauge: "1/0",
  protect: { ...classT, ratingA: 175, distanceIn: 4 },
});

// The vehicle's own side: starter battery and alternator return through the frame.
const frame = chassis({
  name: "bus frame",
  milliohm: 1,
  source: "measured from engine block to seat rail",
  termination: "M10",
});
const starter = battery({
  name: "starter battery",
  chemistry: "flooded lead-acid",
  capacityAh: 90,
  shortCircuitA: 2_500,
  termination: "M10",
});
const engine = alternator({ name: "alternator", ratedA: 110, termination: "M8" });
cable({
  ...heavy,
  name: "alternator to starter battery",
  from: engine.positive,
  to: starter.positive,
  lengthFt: 5,
  gauge: 2,
  protectFarEnd: { ...classT, ratingA: 150, distanceIn: 10 },
});
cable({ ...heavy, name: "engine ground", from: engine.negative, to: frame.metal, lengthFt: 2, gauge: 2 });
cable({ ...heavy, name: "starter ground", from: starter.negative, to: frame.metal, lengthFt: 1.5, gauge: 2 });

const fromEngine = dcDcCharger({
  name: "charger from the engine",
  outputA: 40,
  inputMinV: 12,
  termination: "screw clamp",
});
circuit({
  ...heavy,
  name: "charger input",
  from: starter.positive,
  returnTo: negativeBus.stud,
  to: fromEngine,
  oneWayFt: 16,
  gauge: 2,
  protect: { ...classT, ratingA: 80, distanceIn: 8 },
});
cable({
  ...heavy,
  name: "charger output",
  from: fromEngine.outputPositive,
  to: positiveBus.stud,
  lengthFt: 3,
  gauge: 6,
  protectFarEnd: { ...classT, ratingA: 60, distanceIn: 5 },
});
// The only place where the negative side meets the frame.
cable({
  ...heavy,
  name: "bond to the frame",
  from: negativeBus.stud,
  to: frame.bond,
  lengthFt: 2,
  gauge: "2/0",
});

const fromShore = shoreCharger({ name: "shore charger", outputA: 30, termination: "M5" });
cable({
  ...heavy,
  name: "shore charger, positive",
  from: fromShore.positive,
  to: positiveBus.stud,
  lengthFt: 6,
  gauge: 6,
  protectFarEnd: { ...classT, ratingA: 40, distanceIn: 5 },
});
cable({
  ...heavy,
  name: "shore charger, negative",
  from: fromShore.negative,
  to: negativeBus.stud,
  lengthFt: 6,
  gauge: 6,
});

// Two panels in series on the roof: cold mornings raise their voltage.
const roof = solarArray({
  name: "roof panels",
  openCircuitV: 24.3,
  shortCircuitA: 10.4,
  maxPowerV: 20.4,
  maxPowerA: 9.8,
  openCircuitPercentPerC: -0.29,
  series: 2,
  tiltDeg: 0,
});
const sunController = solarController({
  name: "solar controller",
  maxInputV: 100,
  outputA: 30,
  termination: "screw clamp",
});
circuit({
  ...heavy,
  name: "roof to controller",
  from: roof.positive,
  to: sunController,
  oneWayFt: 18,
  gauge: 10,
});
cable({
  ...heavy,
  name: "solar, positive",
  from: sunController.positive,
  to: positiveBus.stud,
  lengthFt: 5,
  gauge: 6,
  protectFarEnd: { ...classT, ratingA: 40, distanceIn: 5 },
});
cable({
  ...heavy,
  name: "solar, negative",
  from: sunController.negative,
  to: negativeBus.stud,
  lengthFt: 5,
  gauge: 6,
});
