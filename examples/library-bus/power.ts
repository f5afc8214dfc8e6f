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
import { hung } from "./layout.ts";
import { classT, heavy } from "./sizes.ts";

/** Nobody need believe the figures of this example: take the torque from the maker of your own part. */
const invented = "invented for this example";

// The bank under the driver's floor, and everything that is bolted to its bus bars.
const bank = battery({
  ...hung.bank,
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
const mainDisconnect = disconnect({
  ...hung.mainDisconnect,
  name: "main disconnect",
  ratedA: 300,
  termination: "3/8 in",
});
const meter = shunt({ ...hung.meter, name: "bank shunt", ratedA: 500, termination: "M10" });
export const positiveBus = busBar({
  ...hung.positiveBus,
  name: "positive bus",
  side: "positive",
  ratedA: 250,
  studs: 8,
  termination: "5/16 in",
  torqueNm: 10,
  source: invented,
});
export const negativeBus = busBar({
  ...hung.negativeBus,
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
  gauge: "2/0",
  outsideMm: 18,
  protect: { ...classT, ratingA: 250, distanceIn: 6 },
});
cable({
  ...heavy,
  name: "disconnect to bus",
  from: mainDisconnect.load,
  to: positiveBus.stud,
  gauge: "2/0",
  outsideMm: 18,
});
cable({
  ...heavy,
  name: "bank to shunt",
  from: bank.negative,
  to: meter.batterySide,
  gauge: "2/0",
  outsideMm: 18,
});
cable({
  ...heavy,
  name: "shunt to bus",
  from: meter.systemSide,
  to: negativeBus.stud,
  gauge: "2/0",
  outsideMm: 18,
});

/** What every pair from the bus bars has in common. */
const fromBus = { from: positiveBus.stud, returnTo: negativeBus.stud } as const;

export const panel = fusePanel({
  ...hung.panel,
  name: "fuse panel",
  positions: 24,
  ratedA: 150,
  branchRatedA: 30,
  termination: "1/4 in",
  branchTermination: "#8",
  // The panel's maker states this for its blade fuses.
  testedBehind: { family: "UL 248-15 Class T", ratingA: 100, interruptingA: 10_000 },
});
circuit({
  ...fromBus,
  name: "panel feeder",
  to: panel,
  gauge: "2/0",
  outsideMm: 16.5,
  protect: { ...classT, ratingA: 100, distanceIn: 4 },
});

export const kettleInverter = inverter({
  ...hung.kettleInverter,
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
  // Among the others in the trunking, 1/0 AWG would carry 171 A.
  gauge: "2/0",
  outsideMm: 16.5,
  protect: { ...classT, ratingA: 175, distanceIn: 4 },
});

// The vehicle's own side: starter battery and alternator return through the frame.
const frame = chassis({
  ...hung.frame,
  name: "bus frame",
  milliohm: 1,
  source: "measured from engine block to seat rail",
  termination: "M10",
});
const starter = battery({
  ...hung.starter,
  name: "starter battery",
  chemistry: "flooded lead-acid",
  capacityAh: 90,
  shortCircuitA: 2_500,
  termination: "M10",
});
const engine = alternator({ ...hung.engine, name: "alternator", ratedA: 110, termination: "M8" });
cable({
  ...heavy,
  name: "alternator to starter battery",
  from: engine.positive,
  to: starter.positive,
  gauge: 2,
  outsideMm: 12.5,
  protectFarEnd: { ...classT, ratingA: 150, distanceIn: 10 },
});
cable({ ...heavy, name: "engine ground", from: engine.negative, to: frame.metal, gauge: 2, outsideMm: 12.5 });
cable({
  ...heavy,
  name: "starter ground",
  from: starter.negative,
  to: frame.metal,
  gauge: 2,
  outsideMm: 12.5,
});

const fromEngine = dcDcCharger({
  ...hung.fromEngine,
  name: "charger from the engine",
  outputA: 40,
  inputMinV: 12,
  termination: "screw clamp",
});
circuit({
  name: "charger input",
  from: starter.positive,
  returnTo: negativeBus.stud,
  to: fromEngine,
  gauge: 2,
  outsideMm: 11.5,
  protect: { ...classT, ratingA: 80, distanceIn: 6 },
});
cable({
  ...heavy,
  name: "charger output",
  from: fromEngine.outputPositive,
  to: positiveBus.stud,
  gauge: 6,
  outsideMm: 9,
  protectFarEnd: { ...classT, ratingA: 60, distanceIn: 5 },
});
// The only place where the negative side meets the frame.
cable({
  ...heavy,
  name: "bond to the frame",
  from: negativeBus.stud,
  to: frame.bond,
  gauge: "2/0",
  outsideMm: 18,
});

const fromShore = shoreCharger({ ...hung.fromShore, name: "shore charger", outputA: 30, termination: "M5" });
cable({
  ...heavy,
  name: "shore charger, positive",
  from: fromShore.positive,
  to: positiveBus.stud,
  gauge: 6,
  outsideMm: 9,
  protectFarEnd: { ...classT, ratingA: 40, distanceIn: 5 },
});
cable({
  ...heavy,
  name: "shore charger, negative",
  from: fromShore.negative,
  to: negativeBus.stud,
  gauge: 6,
  outsideMm: 9,
});

// Two panels in series on the roof: cold mornings raise their voltage.
const roof = solarArray({
  ...hung.roof,
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
  ...hung.sunController,
  name: "solar controller",
  maxInputV: 100,
  outputA: 30,
  termination: "screw clamp",
});
circuit({
  sheathed: true,
  name: "roof to controller",
  from: roof.positive,
  to: sunController,
  gauge: 10,
  outsideMm: 11,
});
cable({
  ...heavy,
  name: "solar, positive",
  from: sunController.positive,
  to: positiveBus.stud,
  gauge: 6,
  outsideMm: 9,
  protectFarEnd: { ...classT, ratingA: 40, distanceIn: 5 },
});
cable({
  ...heavy,
  name: "solar, negative",
  from: sunController.negative,
  to: negativeBus.stud,
  gauge: 6,
  outsideMm: 9,
});
