import { testRule } from "../rule.tester.ts";
import { batteryVentilationTooSmall } from "./battery-ventilation.ts";

const locker = (
  openings: string,
  battery = 'chemistry: "flooded lead-acid", capacityAh: 100',
  kind = "vehicle",
) => `
  build({ installedIn: ${kind && `"${kind}"`} });
  const locker = compartment({ ${openings} });
  const board = surface({ size: { widthMm: 2_000, heightMm: 800 }, compartment: locker });
  const house = battery({ ${battery}, at: { on: board, leftMm: 100, topMm: 300 } });
  circuit({ name: "Lamp", from: house.positive, returnTo: house.negative, load: 6, gauge: 10, protect: 10, oneWayM: 2 });`;

testRule(batteryVentilationTooSmall, [
  { name: "openings as large as needed", plan: locker("inletCm2: 16.8, outletCm2: 16.8"), finds: "nothing" },
  {
    name: "an outlet just below",
    plan: locker("inletCm2: 16.8, outletCm2: 16.7"),
    finds: [
      {
        subject: "locker",
        record: "locker",
        on: "outletCm2",
        message:
          "The outlet of 16.7 cm² is too small: the battery house needs 0.6 m³/h of air in charging, an inlet and an outlet of 16.8 cm² each (EN 62485-3, ventilation, for a vehicle or boat).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "openings that are not stated",
    plan: locker(""),
    finds: [
      {
        on: "",
        severity: "info",
        message:
          "Openings are not stated: the battery house needs 0.6 m³/h of air in charging, an inlet and an outlet of 16.8 cm² each",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a building, with the gas current while a charger boosts",
    plan: locker("inletCm2: 10, outletCm2: 6", 'chemistry: "AGM", capacityAh: 100', "building"),
    finds: [
      {
        on: "outletCm2",
        message:
          "The outlet of 6 cm² is too small: the battery house needs 0.24 m³/h of air in charging, an inlet and an outlet of 6.72 cm² each (EN 62485-2, ventilation (unconfirmed figure), for a building).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a kind of build that is not stated: the stricter figure",
    plan: locker("inletCm2: 10, outletCm2: 6", 'chemistry: "AGM", capacityAh: 100', "").replace(
      "installedIn: ",
      "name: 'x'",
    ),
    finds: [
      {
        on: "outletCm2",
        message:
          "The outlet of 6 cm² is too small: the battery house needs 0.3 m³/h of air in charging, an inlet and an outlet of 8.4 cm² each (EN 62485-3, ventilation, the stricter one, as installedIn is not stated).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "lithium needs none",
    plan: locker("inletCm2: 0, outletCm2: 0", 'chemistry: "LiFePO4", capacityAh: 100'),
    finds: "nothing",
  },
]);
