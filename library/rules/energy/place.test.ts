import { testRule } from "../rule.tester.ts";
import { july, plan } from "./one-bank.tester.ts";
import { energyPlace } from "./place.ts";

testRule(energyPlace, [
  { name: "one place of that name in the country", plan: plan(july(2)), finds: "nothing" },
  {
    name: "the degrees of a place",
    plan: plan(`latitudeDeg: 36, longitudeDeg: -5.6, months: ["Jul"]`),
    finds: "nothing",
  },
  {
    name: "accents and capitals do not count",
    plan: plan(`place: "koln, de", fromDay: "1 Jul", untilDay: "2 Jul"`),
    finds: "nothing",
  },
  {
    name: "several places of that name",
    plan: plan(`place: "San Fernando", fromDay: "1 Jul", untilDay: "2 Jul"`),
    finds: [
      {
        subject: "trip",
        record: "trip",
        on: "place",
        message: '7 places are called "San Fernando"',
        fixes: [
          { title: "Use San Fernando, ES", kind: "suggestion", gives: { place: "San Fernando, ES" } },
          { title: "Use San Fernando, MX", kind: "suggestion", gives: { place: "San Fernando, MX" } },
          {
            title: "Use San Fernando, PH (15°, 120.7°) by its degrees",
            kind: "suggestion",
            gives: { place: undefined, latitudeDeg: 15, longitudeDeg: 120.7 },
          },
          {
            title: "Use San Fernando, PH (16.6°, 120.3°) by its degrees",
            kind: "suggestion",
            gives: { place: undefined, latitudeDeg: 16.6, longitudeDeg: 120.3 },
          },
        ],
      },
    ],
  },
  {
    name: "a slip of the pen",
    plan: plan(`place: "Tarifaa, ES", fromDay: "1 Jul", untilDay: "2 Jul"`),
    finds: [
      {
        subject: "trip",
        record: "trip",
        on: "place",
        message:
          '"Tarifaa, ES" is not among the known places of 15,000 inhabitants and more, but Tarifa, ES (36°, -5.6°).',
        fixes: [{ title: "Use Tarifa, ES", kind: "suggestion", gives: { place: "Tarifa, ES" } }],
      },
    ],
  },
  {
    name: "no place begins alike",
    plan: plan(`place: "Xq", fromDay: "1 Jul", untilDay: "2 Jul"`),
    finds: [
      {
        record: "trip",
        on: "place",
        message: '"Xq" is not among the known places of 15,000 inhabitants and more. Write',
        fixes: "no fix",
      },
    ],
  },
]);
