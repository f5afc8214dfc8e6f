import type { Case } from "./cases.ts";
import { boatWithPeriod, type Plan, type Values, vanWithPeriod } from "./plans.ts";

/* The properties that only the balance of energy reads, in a plan with a period. */

const twelve = (figure: number) => Array<number>(12).fill(figure);

type Row = readonly [path: string, values: Case["values"], given?: Values];

function rows(
  plan: Plan,
  name: string,
  word: string,
  list: readonly Row[],
  effect: Case["effect"] = "figures",
): Case[] {
  return list.map(([path, values, given = {}]) => ({
    property: `${word}.${path.replace(/\.\d+/g, "")}`,
    ...{ effect, plan, at: `${name}.${path}`, values, given },
  }));
}

/** Of an object with hours at a path: `name.path`. */
function hours(name: string, path: string, given: Values = {}): readonly Row[] {
  const of = (value: object): Values => ({ ...given, [`${name}.${path}`]: value });
  return [
    [`${path}.hoursPerDay`, [1, 5], of({ hoursPerDay: 1 })],
    [`${path}.fromHour`, [8, 12], of({ fromHour: 8, untilHour: 20 })],
    [`${path}.untilHour`, [12, 20], of({ fromHour: 8, untilHour: 20 })],
    [`${path}.daysOfWeek`, [undefined, ["Sat", "Sun"]], of({ hoursPerDay: 3 })],
  ];
}

function use(name: string, path: string, given: Values = {}): readonly Row[] {
  const of = (value: object): Values => ({ ...given, [`${name}.${path}`]: value });
  return [
    ...hours(name, path, given),
    [`${path}.when`, [undefined, "dark"], of({})],
    [`${path}.dutyPercent`, [10, 50], of({})],
    [`${path}.dutyPercentByMonth`, [twelve(10), twelve(50)], of({})],
    [`${path}.months`, [undefined, ["Jun"]], of({ hoursPerDay: 3 })],
    [`${path}.standbyW`, [0, 5], of({ hoursPerDay: 3 })],
  ];
}

/** The same for a circuit that may not state it. */
export function useRefused(plan: Plan, name: string): Case[] {
  const valid = { hoursPerDay: 2 };
  return rows(plan, name, "circuit", [["use", [undefined, valid]], ...use(name, "use")], "refused").map(
    (one) => ({
      ...one,
      ...{ at: `${name}.use`, given: {}, values: [undefined, valid] as const },
    }),
  );
}

const van = vanWithPeriod();
const boat = boatWithPeriod();

export const useOfCircuit: readonly Case[] = rows(van, "lamp", "circuit", [
  ["use", [undefined, { hoursPerDay: 2 }]],
  ...use("lamp", "use"),
]);

const kettle = [{ name: "kettle", powerW: 300, use: { hoursPerDay: 0.5 } }];
const devices: Values = { "kettle.devices": kettle };

export const energyCases: readonly Case[] = [
  ...rows(boat, "heater", "load", [["use", [undefined, { hoursPerDay: 2 }]], ...use("heater", "use")]),
  ...rows(boat, "pump", "motor", [["use", [undefined, { hoursPerDay: 2 }]], ...use("pump", "use")]),
  ...rows(boat, "kettle", "inverter", [
    ["use", [undefined, { hoursPerDay: 2 }], { "kettle.idleW": 8 }],
    ...hours("kettle", "use", { "kettle.idleW": 8 }),
    ["devices", [undefined, kettle]],
    ["devices.0.powerW", [100, 300], devices],
    ["devices.0.use", [{ hoursPerDay: 1 }, { hoursPerDay: 2 }], devices],
    ...use("kettle", "devices.0.use", devices),
  ]),
  ...rows(boat, "kettle", "inverter", [["devices.0.name", ["kettle", "pot"], devices]], "documents"),
  ...rows(boat, "modules", "solarArray", [
    ["tiltDeg", [undefined, 40]],
    ["facingDeg", [90, 180], { "modules.tiltDeg": 40 }],
    ["shadePercentByMonth", [undefined, twelve(30)]],
    ["horizonDegByDirection", [undefined, [40, 40, 40, 40, 40, 40, 40, 40]]],
  ]),
  ...rows(boat, "mains", "shoreCharger", [["averageWByMonth", [undefined, twelve(20)]]]),
  ...rows(boat, "house", "battery", [
    ["reservePercent", [undefined, 60]],
    ["minimumChargePercent", [undefined, 90]],
    ["stateOfHealthPercent", [undefined, 70]],
    ["standbyW", [undefined, 5]],
  ]),
  ...rows(boat, "year", "period", [["name", ["year", "changed"]]], "documents"),
  ...rows(boat, "year", "period", [
    ["place", ["Tarifa, ES", "Oslo, NO"], { "year.latitudeDeg": undefined, "year.longitudeDeg": undefined }],
    ["latitudeDeg", [45, 60]],
    ["longitudeDeg", [5, 100]],
    ["months", [undefined, ["Jan", "Feb"]]],
    ["fromDay", ["1 Jan", "1 Mar"], { "year.untilDay": "1 Jun" }],
    ["untilDay", ["1 Jun", "29 Feb"], { "year.fromDay": "1 Jan" }],
    ["driving", [undefined, { hoursPerDay: 2 }]],
    ...hours("year", "driving"),
    ["driving.everyDays", [1, 3], { "year.driving": { hoursPerDay: 2 } }],
    ["shore", [undefined, { hoursPerDay: 2 }]],
    ...hours("year", "shore"),
    ["shore.everyDays", [1, 3], { "year.shore": { hoursPerDay: 2 } }],
    ["notUsed", [[], [boat.lamp]]],
    ["bankHeated", [false, true]],
    ["startPercent", [100, 30], { "year.months": ["Jan"] }],
    ["clockAheadH", [0, 3], { "house.capacityAh": 20 }],
    ["irradiation", [twelve(2), twelve(4)]],
  ]),
];
