import { testRule } from "../rule.tester.ts";
import { halfBank } from "./half-bank.ts";

const string = (rest: string) => `
  build({ voltage: 24 });
  const lower = battery({ chemistry: "AGM", nominalV: 12, capacityAh: 100, internalMilliohm: 5 });
  const upper = battery({ chemistry: "AGM", nominalV: 12, capacityAh: 100, internalMilliohm: 5 });
  const middle = busBar({ name: "middle" });
  cable({ from: lower.positive, to: middle.stud, lengthFt: 1, gauge: 2 });
  cable({ from: middle.stud, to: upper.negative, lengthFt: 1, gauge: 2 });
  circuit({ name: "winch", from: upper.positive, returnTo: lower.negative, load: 20, oneWayFt: 5, gauge: 8, protect: 30 });
  ${rest}`;

// Common practice, no source.
testRule(halfBank, [
  { name: "loads across the whole bank only", plan: string(""), finds: "nothing" },
  {
    name: "lamps on the lower battery alone: one finding for the bank",
    plan: string(`
      circuit({ name: "radio", voltage: 12, from: middle.stud, returnTo: lower.negative, load: 5, oneWayFt: 5, gauge: 12, protect: 10 });
      circuit({ name: "lamps", voltage: 12, from: middle.stud, returnTo: lower.negative, load: 3, oneWayFt: 5, gauge: 12, protect: 5 });`),
    finds: [
      {
        subject: "radio",
        record: "radio",
        on: "",
        severity: "warning",
        message:
          "radio and lamps draw from 12 V of a bank of 24 V: that part is emptied first, and the charger then overcharges the rest. Feed them from the whole bank through a DC-DC converter.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a load on the upper battery",
    plan: string(`
      circuit({ name: "fan", voltage: 12, from: upper.positive, returnTo: middle.stud, load: 5, oneWayFt: 5, gauge: 12, protect: 10 });`),
    finds: [{ subject: "fan", on: "", message: "fan draws from 12 V of a bank of 24 V", fixes: "no fix" }],
  },
  {
    name: "an inverter on the lower battery",
    plan: string(`
      const sine = inverter({ name: "sine", continuousW: 200 });
      circuit({ name: "sine wires", from: middle.stud, returnTo: lower.negative, to: sine, oneWayFt: 3, gauge: 8, protect: 30 });`),
    finds: [
      {
        subject: "sine",
        on: "",
        message:
          "The inverter sine draws from 12 V of a bank of 24 V: that part is emptied first, and the charger then overcharges the rest. Use an inverter for 24 V on the whole bank.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "two chargers, one for each battery",
    plan: string(`
      for (const [plus, minus] of [[middle.stud, lower.negative], [upper.positive, middle.stud]]) {
        const one = shoreCharger({ outputA: 10, outputV: 14.4 });
        cable({ from: one.positive, to: plus, lengthFt: 2, gauge: 8 });
        cable({ from: one.negative, to: minus, lengthFt: 2, gauge: 8 });
      }`),
    finds: "nothing",
  },
  {
    name: "a charger for one of the batteries alone",
    plan: string(`
      const one = shoreCharger({ name: "charger", outputA: 10, outputV: 14.4 });
      cable({ from: one.positive, to: middle.stud, lengthFt: 2, gauge: 8 });
      cable({ from: one.negative, to: lower.negative, lengthFt: 2, gauge: 8 });`),
    finds: [
      {
        subject: "charger",
        record: "charger",
        on: "",
        severity: "error",
        message:
          "The charger charges 12 V of a bank of 24 V: the rest gets less charge or none, is emptied first, and may be reversed. Charge the whole bank, or each battery with a charger of its own.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "an array straight on one of the batteries",
    plan: string(`
      const roof = solarArray({ name: "roof", shortCircuitA: 6, openCircuitV: 21, maxPowerA: 5.5, maxPowerV: 17 });
      cable({ from: roof.positive, to: middle.stud, lengthFt: 2, gauge: 8 });
      cable({ from: roof.negative, to: lower.negative, lengthFt: 2, gauge: 8 });`),
    finds: [
      {
        subject: "roof",
        on: "",
        severity: "error",
        message: "The solar array roof charges 12 V of a bank of 24 V",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "an equaliser, which takes from the whole bank",
    plan: string(`
      const even = dcDcCharger({ name: "equaliser", outputA: 5, outputV: 13.6, runs: "always" });
      circuit({ name: "even in", from: upper.positive, returnTo: lower.negative, to: even, oneWayFt: 2, gauge: 10, protect: 10 });
      cable({ from: even.outputPositive, to: middle.stud, lengthFt: 2, gauge: 10, protectFarEnd: 10 });`),
    finds: "nothing",
  },
  {
    name: "accepted with a reason",
    plan: string(`
      circuit({ name: "clock", voltage: 12, from: middle.stud, returnTo: lower.negative, load: 0.01, oneWayFt: 5, gauge: 16,
        protect: 1, accept: { "battery/half-bank": "an equaliser is fitted" } });`),
    finds: [
      { on: "", message: "clock draws from 12 V", accepted: "an equaliser is fitted", fixes: "no fix" },
    ],
  },
]);
