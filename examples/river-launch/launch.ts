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
import { hung } from "./layout.ts";

// A river launch with an inboard petrol engine and one lead-acid battery: runs from the battery switch in the engine space,
// and from the helm panel forward. 33 CFR 183 is written for boats like this one.
// Conductors that lie together may not carry more than they can there.
build({
  name: "river launch",
  voltage: 12,
  installedIn: "boat with petrol engine",
  insulationC: 105,
  lowestC: -5,
  bundledInChannels: true,
});

// Beside the battery a fuse must be able to interrupt more than most blade and strip fuses can.
const classT = { family: "UL 248-15 Class T", interruptingA: 20_000 } as const;

// Heavy cables are each in a sheath of their own.
const heavy = { sheathed: true } as const;

const bank = battery({
  ...hung.bank,
  name: "battery",
  chemistry: "AGM",
  capacityAh: 110,
  shortCircuitA: 2_400,
  maxDischargeA: 300,
  maxChargeA: 80,
  reservePercent: 50,
});
const batterySwitch = disconnect({ ...hung.batterySwitch, name: "battery switch", ratedA: 200 });
const positiveBus = busBar({
  ...hung.positiveBus,
  name: "positive bus",
  side: "positive",
  ratedA: 150,
  studs: 8,
});
const negativeBus = busBar({
  ...hung.negativeBus,
  name: "negative bus",
  side: "negative",
  ratedA: 150,
  studs: 8,
});

cable({
  ...heavy,
  name: "battery to switch",
  from: bank.positive,
  to: batterySwitch.line,
  gauge: 2,
  outsideMm: 12.5,
  protect: { ...classT, ratingA: 150, distanceIn: 10 },
});
cable({
  ...heavy,
  name: "switch to bus",
  from: batterySwitch.load,
  to: positiveBus.stud,
  gauge: 2,
  outsideMm: 12.5,
});
cable({
  ...heavy,
  name: "negative to bus",
  from: bank.negative,
  to: negativeBus.stud,
  gauge: 2,
  outsideMm: 12.5,
});

// The alternator limits itself; what the bank could push back into its cable is what the fuse at the switch is for. It is on the
// battery's side: a hand that turns the switch off must not take the battery from a running engine.
const engine = alternator({ ...hung.engine, name: "alternator", ratedA: 50 });
cable({
  ...heavy,
  name: "alternator, positive",
  from: engine.positive,
  to: batterySwitch.line,
  gauge: 4,
  outsideMm: 10.5,
  protectFarEnd: { ...classT, ratingA: 70, distanceIn: 5 },
});
cable({
  ...heavy,
  name: "alternator, negative",
  from: engine.negative,
  to: negativeBus.stud,
  gauge: 4,
  outsideMm: 10.5,
});
const dock = shoreCharger({ ...hung.dock, name: "dock charger", outputA: 15 });
cable({
  ...heavy,
  name: "dock charger, positive",
  from: dock.positive,
  to: positiveBus.stud,
  gauge: 8,
  outsideMm: 7.5,
  protectFarEnd: { ...classT, ratingA: 30, distanceIn: 5 },
});
cable({
  ...heavy,
  name: "dock charger, negative",
  from: dock.negative,
  to: negativeBus.stud,
  gauge: 8,
  outsideMm: 7.5,
});

// One module, flat on the cabin roof: at anchor the boat swings, and no side of it faces the sun for long.
const module = solarArray({
  ...hung.module,
  name: "roof module",
  openCircuitV: 22.1,
  shortCircuitA: 5.9,
  maxPowerV: 18.2,
  maxPowerA: 5.5,
  openCircuitPercentPerC: -0.3,
});
const controller = solarController({
  ...hung.controller,
  name: "solar controller",
  maxInputV: 50,
  outputA: 10,
});
// Its own leads are 10 ft long, and are not cut.
circuit({
  name: "module to controller",
  from: module.positive,
  to: controller,
  oneWayFt: 10,
  gauge: 12,
  outsideMm: 4.4,
});
cable({
  ...heavy,
  name: "solar, positive",
  from: controller.positive,
  to: positiveBus.stud,
  gauge: 10,
  outsideMm: 6.5,
  protectFarEnd: { ...classT, ratingA: 15, distanceIn: 5 },
});
cable({
  ...heavy,
  name: "solar, negative",
  from: controller.negative,
  to: negativeBus.stud,
  gauge: 10,
  outsideMm: 6.5,
});

const fromBus = { from: positiveBus.stud, returnTo: negativeBus.stud } as const;
const helm = fusePanel({
  ...hung.helm,
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
  gauge: 1,
  outsideMm: 13,
  protect: { ...classT, ratingA: 60, distanceIn: 5 },
});
const blower = circuit({
  ...fromBus,
  ...hung.blower,
  name: "engine-space blower",
  load: 6,
  gauge: 10,
  outsideMm: 5,
  critical: true,
  // Before the engine is started, and while it runs.
  use: { hoursPerDay: 1 },
  protect: { ...classT, ratingA: 10, distanceIn: 6 },
});
// The bilge pump must run while nobody is aboard: it starts at the battery itself, ahead of the switch.
circuit({
  ...hung.bilgePump,
  name: "bilge pump",
  from: bank.positive,
  returnTo: negativeBus.stud,
  load: 5,
  gauge: 10,
  outsideMm: 5,
  critical: true,
  use: { hoursPerDay: 0.2 },
  protect: { ...classT, ratingA: 10, distanceIn: 6 },
});

// Forward of the bulkhead.
const fromHelm = { from: helm.branch } as const;
const navigationLights = circuit({
  ...fromHelm,
  ...hung.navigationLights,
  name: "navigation lights",
  load: 2.5,
  gauge: 12,
  outsideMm: 4.4,
  protect: 5,
  critical: true,
  use: { hoursPerDay: 0.5, when: "dark" },
});
const anchorLight = circuit({
  ...fromHelm,
  ...hung.anchorLight,
  name: "anchor light",
  load: 0.5,
  gauge: 16,
  outsideMm: 3.2,
  protect: 2,
  critical: true,
  use: { when: "dark" },
});
circuit({
  ...fromHelm,
  ...hung.horn,
  name: "horn",
  load: 5,
  continuous: false,
  gauge: 14,
  outsideMm: 3.9,
  protect: 10,
  use: { hoursPerDay: 0 },
});
const radio = circuit({
  ...fromHelm,
  ...hung.radio,
  name: "VHF radio",
  load: 5,
  gauge: 12,
  outsideMm: 4.4,
  protect: 7.5,
  critical: true,
  use: { hoursPerDay: 0.2, standbyW: 4 },
});
const sounder = circuit({
  ...fromHelm,
  ...hung.sounder,
  name: "depth sounder",
  load: 1,
  gauge: 16,
  outsideMm: 3.2,
  protect: 2,
  critical: true,
  use: { hoursPerDay: 1.5 },
});
const cabinLights = circuit({
  ...fromHelm,
  ...hung.cabinLights,
  name: "cabin lights",
  load: 2,
  gauge: 16,
  outsideMm: 3.2,
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
