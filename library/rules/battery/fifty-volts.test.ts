import { testRule } from "../rule.tester.ts";
import { fiftyVolts } from "./fifty-volts.ts";

const bank = (options: string) => `
  build({ voltage: 48 });
  const bank = battery({ capacityAh: 100, internalMilliohm: 20, ${options} });
  circuit({ name: "lamp", from: bank.positive, load: 3, oneWayFt: 5, gauge: 12, protect: 5 });`;

const message =
  "Sixteen cells of LiFePO4 are nominally 51.2 V: from 50 V 33 CFR 183.435(a) asks for conductors of NFPA 70 Article 310, flexible cord of Article 400, IEEE 45 or UL 1426. Check the marking of each conductor.";

// 33 CFR 183.435(a): circuits of 50 V or more.
testRule(fiftyVolts, [
  { name: "24 cells of lead-acid are 48 V", plan: bank('chemistry: "AGM"'), finds: "nothing" },
  {
    name: "sixteen cells of LiFePO4 with the label 48 V",
    plan: bank('chemistry: "LiFePO4", nominalV: 48'),
    finds: [{ subject: "bank", record: "bank", on: "", severity: "info", message, fixes: "no fix" }],
  },
  {
    name: "the same cells with the label 51.2 V: the same words",
    plan: bank('chemistry: "LiFePO4", nominalV: 51.2'),
    finds: [{ on: "", severity: "info", message, fixes: "no fix" }],
  },
  {
    name: "four batteries of four cells in series: once for the plan",
    plan: `
      const cells = [1, 2, 3, 4].map((at) => battery({ name: "block " + at, chemistry: "LiFePO4", nominalV: 12, capacityAh: 100 }));
      cells.slice(1).forEach((upper, at) => cable({ from: cells[at].positive, to: upper.negative, lengthFt: 1, gauge: 2 }));
      circuit({ name: "lamp", voltage: 48, from: cells[3].positive, returnTo: cells[0].negative, load: 3, oneWayFt: 5, gauge: 12, protect: 5 });`,
    finds: [{ subject: "block 1", on: "", severity: "info", message, fixes: "no fix" }],
  },
]);
