import {
  alternator,
  battery,
  build,
  busBar,
  cable,
  circuit,
  disconnect,
  fusePanel,
  period,
  shoreCharger,
  solarArray,
  solarController,
} from "loomwright";

// A river launch with an inboard petrol engine and one lead-acid battery: runs from the battery switch in the engine space,
// and from the helm panel forward. 33 CFR 183 is written for boats like this one.
build({ name: "river launch", voltage: 12, insulationC: 105, lowestC: -5 });

// Beside the battery a fuse must be able to interrupt more than most blade and strip fuses can.
const classT = { family: "UL 248-15 Class T", interruptingA: 20_000 } as const;

// In the engine space conductors start out hot: the engine-space factor cuts what they may carry.
const inEngineSpace = { engineSpace: true, sheathed: true } as const;

const bank = battery({
  name: "battery",
  chemistry: "AGM",
  capacityAh: 110,
  shortCircuitA: 2_400,
  maxDischargeA: 300,
  maxChargeA: 80,
  reservePercent: 50,
});
const batterySwitch = disconnect({ name: "battery switch", ratedA: 200 });
const positiveBus = busBar({ name: "positive bus", side: "positive", ratedA: 150, studs: 8 });
const negativeBus = busBar({ name: "negative bus", side: "negative", ratedA: 150, studs: 8 });

cable({
  ...inEngineSpace,
  name: "battery to switch",
  from: bank.positive,
  to: batterySwitch.line,
  lengthFt: 4,
  gauge: 2,
  protect: { ...classT, ratingA: 150, distanceIn: 10 },
});
cable({
  ...inEngineSpace,
  name: "switch to bus",
  from: batterySwitch.load,
  to: positiveBus.stud,
  lengthFt: 2,
  gauge: 2,
});
cable({
  ...inEngineSpace,
  name: "negative to bus",
  from: bank.negative,
  to: negativeBus.stud,
  lengthFt: 4,
  gauge: 2,
});

// The alternator limits itself; what the bank could push back into its cable is what the fuse at the switch is for. It is on the
// battery's side: a hand that turns the switch off must not take the battery from a running engine.
const engine = alternator({ name: "alternator", ratedA: 50 });
cable({
  ...inEngineSpace,
  name: "alternator, positive",
  from: engine.positive,
  to: batterySwitch.line,
  lengthFt: 6,
  gauge: 4,
  protectFarEnd: { ...classT, ratingA: 70, distanceIn: 5 },
});
cable({
  ...inEngineSpace,
  name: "alternator, negative",
  from: engine.negative,
  to: negativeBus.stud,
  lengthFt: 6,
  gauge: 4,
});
const dock = shoreCharger({ name: "dock charger", outputA: 15 });
cable({
  ...inEngineSpace,
  name: "dock charger, positive",
  from: dock.positive,
  to: positiveBus.stud,
  lengthFt: 5,
  gauge: 8,
  protectFarEnd: { ...classT, ratingA: 30, distanceIn: 5 },
});
cable({
  ...inEngineSpace,
  name: "dock charger, negative",
  from: dock.negative,
  to: negativeBus.stud,
  lengthFt: 5,
  gauge: 8,
});

// One module, flat on the cabin roof: at anchor the boat swings, and no side of it faces the sun for long.
const module = solarArray({
  name: "roof module",
  openCircuitV: 22.1,
  shortCircuitA: 5.9,
  maxPowerV: 18.2,
  maxPowerA: 5.5,
  openCircuitPercentPerC: -0.3,
});
const controller = solarController({ name: "solar controller", maxInputV: 50, outputA: 10 });
circuit({ name: "module to controller", from: module.positive, to: controller, oneWayFt: 10, gauge: 12 });
cable({
  ...inEngineSpace,
  name: "solar, positive",
  from: controller.positive,
  to: positiveBus.stud,
  lengthFt: 6,
  gauge: 10,
  protectFarEnd: { ...classT, ratingA: 15, distanceIn: 5 },
});
cable({
  ...inEngineSpace,
  name: "solar, negative",
  from: controller.negative,
  to: negativeBus.stud,
  lengthFt: 6,
  gauge: 10,
});

const fromBus = { ...inEngineSpace, from: positiveBus.stud, returnTo: negativeBus.stud } as const;
const helm = fusePanel({
  name: "helm panel",
  positions: 12,
  ratedA: 80,
  branchRatedA: 30,
  // The panel's maker states this for its blade fuses.
  testedBehind: { family: "UL 248-15 Class T", ratingA: 60, interruptingA: 5_000 },
});
circuit({
  ...fromBus,
  name: "helm panel feeder",
  to: helm,
  oneWayFt: 14,
  gauge: 1,
  protect: { ...classT, ratingA: 60, distanceIn: 5 },
});
const blower = circuit({
  ...fromBus,
  name: "engine-space blower",
  load: 6,
  oneWayFt: 12,
  gauge: 10,
  critical: true,
  // Before the engine is started, and while it runs.
  use: { hoursPerDay: 1 },
  protect: { ...classT, ratingA: 10, distanceIn: 6 },
});
// The bilge pump must run while nobody is aboard: it starts at the battery itself, ahead of the switch.
circuit({
  ...inEngineSpace,
  name: "bilge pump",
  from: bank.positive,
  returnTo: negativeBus.stud,
  load: 5,
  oneWayFt: 16,
  gauge: 10,
  critical: true,
  use: { hoursPerDay: 0.2 },
  protect: { ...classT, ratingA: 10, distanceIn: 18 },
});

// Forward of the bulkhead.
const fromHelm = { from: helm.branch } as const;
const navigationLights = circuit({
  ...fromHelm,
  name: "navigation lights",
  load: 2.5,
  oneWayFt: 18,
  gauge: 12,
  protect: 5,
  critical: true,
  use: { hoursPerDay: 0.5, when: "dark" },
});
const anchorLight = circuit({
  ...fromHelm,
  name: "anchor light",
  load: 0.5,
  oneWayFt: 20,
  gauge: 16,
  protect: 2,
  critical: true,
  use: { when: "dark" },
});
circuit({
  ...fromHelm,
  name: "horn",
  load: 5,
  continuous: false,
  oneWayFt: 12,
  gauge: 14,
  protect: 10,
  use: { hoursPerDay: 0 },
});
const radio = circuit({
  ...fromHelm,
  name: "VHF radio",
  load: 5,
  oneWayFt: 8,
  gauge: 12,
  protect: 7.5,
  critical: true,
  use: { hoursPerDay: 0.2, standbyW: 4 },
});
const sounder = circuit({
  ...fromHelm,
  name: "depth sounder",
  load: 1,
  oneWayFt: 10,
  gauge: 16,
  protect: 2,
  critical: true,
  use: { hoursPerDay: 1.5 },
});
const cabinLights = circuit({
  ...fromHelm,
  name: "cabin lights",
  load: 2,
  oneWayFt: 12,
  gauge: 16,
  protect: 5,
  use: { hoursPerDay: 3, when: "dark" },
});

// Two months at anchor, with a trip of an hour and a half every other day.
period({
  name: "at anchor",
  place: "Tarifa, ES",
  fromDay: "15 Jun",
  untilDay: "15 Aug",
  driving: { hoursPerDay: 1.5, everyDays: 2 },
});
// At the dock in the cold half of the year: only the bilge pump is on, and the dock charger for a night each week.
period({
  name: "at the dock",
  place: "Tarifa, ES",
  fromDay: "1 Oct",
  untilDay: "31 Mar",
  shore: { fromHour: 20, untilHour: 6, everyDays: 7 },
  notUsed: [blower, navigationLights, anchorLight, radio, sounder, cabinLights],
});
