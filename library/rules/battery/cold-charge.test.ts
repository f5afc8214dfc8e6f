import { testRule } from "../rule.tester.ts";
import { coldCharge } from "./cold-charge.ts";

const charged = (options: string, charger = true) => `
  const house = battery({ capacityAh: 100, internalMilliohm: 5, ${options} });
  ${
    charger
      ? `const shore = shoreCharger({ outputA: 20 });
  cable({ from: shore.positive, to: house.positive, lengthFt: 3, gauge: 4 });
  cable({ from: shore.negative, to: house.negative, lengthFt: 3, gauge: 4 });`
      : `circuit({ from: house.positive, load: 5, oneWayFt: 5, gauge: 12, protect: 10 });`
  }`;

const winter = (options: string, period: string) => `${charged(options)}
  circuit({ name: "lamp", from: house.positive, returnTo: house.negative, load: 5, oneWayFt: 5, gauge: 12, protect: 10, use: { hoursPerDay: 1 } });
  period({ name: "winter", latitudeDeg: 60, longitudeDeg: 25, months: ["Dec", "Jan"], ${period} });`;

const lithium = `chemistry: "LiFePO4"`;

// Data sheets of LiFePO4 cells: no charge below 0 °C, where metallic lithium is deposited.
testRule(coldCharge, [
  { name: "the place of the battery is not stated", plan: charged(lithium), finds: "nothing" },
  { name: "as cold as 0 °C", plan: charged(`${lithium}, lowestC: 0`), finds: "nothing" },
  {
    name: "colder, and nothing stops the charge",
    plan: charged(`${lithium}, lowestC: -1`),
    finds: [
      {
        subject: "house",
        record: "house",
        on: "lowestC",
        severity: "warning",
        message:
          "Its place gets as cold as -1 °C (lowestC), and no cut-off is stated: LiFePO4 must not be charged below 0 °C (Data sheets of LiFePO4 cells). Keep it warmer, or state chargeCutOffC of its protection.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "its protection stops the charge at 2 °C",
    plan: charged(`${lithium}, lowestC: -15, chargeCutOffC: 2`),
    finds: "nothing",
  },
  {
    name: "a cut-off that comes too late",
    plan: charged(`${lithium}, lowestC: -15, chargeCutOffC: -10`),
    finds: [
      {
        on: "chargeCutOffC",
        severity: "warning",
        message:
          "Its place gets as cold as -15 °C (lowestC), and charging stops only below -10 °C (chargeCutOffC)",
        fixes: "no fix",
      },
    ],
  },
  { name: "lead-acid", plan: charged(`chemistry: "AGM", lowestC: -15`), finds: "nothing" },
  { name: "nothing charges it", plan: charged(`${lithium}, lowestC: -15`, false), finds: "nothing" },
  {
    name: "the coldest day of the roof is not the battery's",
    plan: `build({ lowestC: -20 }); ${charged(lithium)}`,
    finds: "nothing",
  },
  {
    name: "a winter in the north, charged on shore power",
    plan: winter(lithium, "shore: { hoursPerDay: 2 }"),
    finds: [
      {
        subject: "house",
        record: "house",
        on: "",
        message: "In winter it is not kept warm (bankHeated), the mean of Dec and Jan falls to about -",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the same, kept warm",
    plan: winter(lithium, "shore: { hoursPerDay: 2 }, bankHeated: true"),
    finds: "nothing",
  },
  {
    name: "the same, in a place that never freezes",
    plan: winter(`${lithium}, lowestC: 8`, "shore: { hoursPerDay: 2 }"),
    finds: "nothing",
  },
  {
    name: "the same, and its protection stops the charge",
    plan: winter(`${lithium}, chargeCutOffC: 0`, "shore: { hoursPerDay: 2 }"),
    finds: "nothing",
  },
  { name: "the same, and nothing charges it", plan: winter(lithium, ""), finds: "nothing" },
  {
    name: "the same, lead-acid",
    plan: winter(`chemistry: "AGM"`, "shore: { hoursPerDay: 2 }"),
    finds: "nothing",
  },
  {
    name: "accepted with a reason",
    plan: charged(`${lithium}, lowestC: -5, accept: { "battery/cold-charge": "not charged in winter" }`),
    finds: [{ on: "lowestC", message: "Its place", accepted: "not charged in winter", fixes: "no fix" }],
  },
]);
