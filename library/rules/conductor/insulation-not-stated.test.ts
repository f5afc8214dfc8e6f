import { testRule } from "../rule.tester.ts";
import { insulationNotStated } from "./insulation-not-stated.ts";

testRule(insulationNotStated, [
  {
    name: "stated in the circuit, though it is what would be taken",
    circuits: [{ insulationC: 75 }],
    finds: "nothing",
  },
  {
    name: "stated for the whole build",
    build: { insulationC: 105 },
    circuits: [{ insulationC: undefined }],
    finds: "nothing",
  },
  {
    name: "stated nowhere: the 75 °C column",
    circuits: [{ insulationC: undefined }],
    finds: [
      {
        on: "",
        severity: "hint",
        message: "insulationC is not given: judged by the 75 °C column (33 CFR 183.425(b), Table 5)",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "stated nowhere, metric: the 70 °C column is the next cooler one",
    circuits: [{ insulationC: undefined, gauge: undefined, mm2: 25 }],
    finds: [
      {
        on: "",
        message:
          "insulationC is not given: judged by the 70 °C column (ISO 10133:2012 Annex A, unconfirmed figure)",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "stated for one circuit of two",
    circuits: [{}, { name: "Pump", insulationC: undefined }],
    finds: [{ subject: "Pump", on: "", message: "insulationC is not given", fixes: "no fix" }],
  },
]);
