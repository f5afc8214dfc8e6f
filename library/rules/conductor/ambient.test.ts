import { testRule } from "../rule.tester.ts";
import { ambient } from "./ambient.ts";

testRule(ambient, [
  {
    name: "just cooler than the insulation may get",
    circuits: [{ ambientC: 74.9, load: 1 }],
    finds: "nothing",
  },
  {
    name: "as hot as the insulation may get",
    circuits: [{ ambientC: 75, load: 10, protect: 15 }],
    finds: [
      {
        on: "insulationC",
        message:
          "Insulation judged as 75 °C: its ampacity is zero in a place of 75 °C; choose insulation rated 80 °C, or a cooler route.",
        values: { columnC: 75, ambientC: 75, enoughC: 80 },
        fixes: [{ title: "Use insulation rated 80 °C", kind: "suggestion", gives: { insulationC: 80 } }],
      },
    ],
  },
  {
    name: "hotter than the insulation may get: the suggestion also carries the load and suits the fuse",
    circuits: [{ ambientC: 85 }],
    finds: [
      {
        on: "insulationC",
        message: "Insulation judged as 75 °C: its ampacity is zero in a place of 85 °C",
        fixes: [{ title: "Use insulation rated 105 °C", kind: "suggestion", gives: { insulationC: 105 } }],
      },
    ],
  },
  {
    name: "the suggestion suits the fuse at the far end as well",
    circuits: [{ ambientC: 85, fedFromBothEnds: true, protectFarEnd: 100 }],
    finds: [
      {
        on: "insulationC",
        message: "Insulation judged as 75 °C: its ampacity is zero in a place of 85 °C",
        fixes: [{ title: "Use insulation rated 125 °C", kind: "suggestion", gives: { insulationC: 125 } }],
      },
    ],
  },
  {
    name: "insulation that nobody stated",
    circuits: [{ insulationC: undefined, ambientC: 80 }],
    finds: [
      {
        on: "ambientC",
        message: "Insulation not stated, taken as 75 °C: its ampacity is zero in a place of 80 °C",
        fixes: [{ title: "Use insulation rated 90 °C", kind: "suggestion", gives: { insulationC: 90 } }],
      },
    ],
  },
  {
    name: "a stated rating between two columns is judged by the cooler one",
    circuits: [{ insulationC: 70, ambientC: 62 }],
    finds: [
      {
        on: "insulationC",
        message: "Insulation judged as 60 °C: its ampacity is zero in a place of 62 °C",
        fixes: [{ title: "Use insulation rated 75 °C", kind: "suggestion", gives: { insulationC: 75 } }],
      },
    ],
  },
  {
    name: "60 °C insulation in AWG may go into an engine space: the table has a factor for it",
    circuits: [{ insulationC: 60, engineSpace: true }],
    finds: "nothing",
  },
  {
    name: "60 °C insulation in metric sizes may not",
    circuits: [{ gauge: undefined, mm2: 25, insulationC: 60, engineSpace: true }],
    finds: [
      {
        on: "insulationC",
        message:
          "Insulation judged as 60 °C: its ampacity is zero in an engine space of 60 °C (ISO 10133:2012 Annex A, engine spaces, unconfirmed figure); choose insulation rated 70 °C",
        fixes: [{ title: "Use insulation rated 70 °C", kind: "suggestion", gives: { insulationC: 70 } }],
      },
    ],
  },
  {
    name: "no insulation in the tables stands it",
    circuits: [{ insulationC: 200, ambientC: 200 }],
    finds: [
      {
        on: "insulationC",
        message:
          "Insulation judged as 200 °C: its ampacity is zero in a place of 200 °C; choose a cooler route, or insulation for hotter places.",
        fixes: "no fix",
      },
    ],
  },
]);
