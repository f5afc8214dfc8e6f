import { testRule } from "../rule.tester.ts";
import { disconnectMissing } from "./missing.ts";

/** A lamp of 5 A from a terminal back to the bank. */
const bank = (rest: string, options = "") => `
  const house = battery({ name: "house bank", chemistry: "AGM", capacityAh: 200, internalMilliohm: 3${options} });
  const out = (name, from, more) =>
    circuit({ name, from, returnTo: house.negative, load: 5, oneWayFt: 5, gauge: 10, protect: 10, ...more });
  ${rest}`;

const switched = `
  const off = disconnect({ ratedA: 100 });
  cable({ from: house.positive, to: off.line, lengthFt: 2, gauge: 2 });`;

testRule(disconnectMissing, [
  {
    name: "everything behind a disconnect",
    plan: bank(`${switched} out("lamp", off.load);`),
    finds: "nothing",
  },
  {
    name: "no disconnect at all",
    plan: bank(`
      const main = busBar({});
      cable({ from: house.positive, to: main.stud, lengthFt: 2, gauge: 2 });
      out("lamp", main.stud); out("fan", main.stud);`),
    finds: [
      {
        subject: "house bank",
        record: "house bank",
        on: "",
        message:
          "This bank has no disconnect before lamp and fan, so it cannot be cut off by hand: put one near it (ISO 10133:2012, clause 6, unconfirmed figure).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "one circuit ahead of the disconnect: information",
    plan: bank(`${switched} out("lamp", off.load); out("fan", house.positive);`),
    finds: [
      {
        subject: "fan",
        record: "fan",
        on: "from",
        severity: "info",
        message:
          "Leaves the bank ahead of every disconnect, so fan cannot be cut off by hand: start it behind one, unless it has to stay on (ISO 10133:2012, clause 6, unconfirmed figure).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "an inverter ahead of the disconnect: a warning",
    plan: bank(`${switched} out("lamp", off.load);
      const socket = inverter({ name: "socket", continuousW: 300 });
      circuit({ name: "socket pair", from: house.positive, to: socket, oneWayFt: 3, gauge: 6, protect: 50 });`),
    finds: [
      {
        subject: "socket pair",
        record: "socket pair",
        on: "from",
        severity: "warning",
        message:
          "Leaves the bank ahead of every disconnect, so the inverter socket cannot be cut off by hand",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a bilge pump or an alarm ahead of the disconnect may have to stay on",
    plan: bank(
      `${switched} out("lamp", off.load); out("pompe", house.positive, { purpose: "bilge pump" }); out("gas alarm", house.positive);`,
    ),
    finds: "nothing",
  },
  {
    name: "a critical circuit ahead of the disconnect may have to stay on",
    plan: bank(`${switched} out("lamp", off.load); out("bilge pump", house.positive, { critical: true });`),
    finds: "nothing",
  },
  {
    name: "a breaker is opened by hand too",
    plan: bank(`out("lamp", house.positive, { protect: { ratingA: 10, family: "circuit breaker" } });`),
    finds: "nothing",
  },
  {
    name: "a fuse is not",
    plan: bank(`out("lamp", house.positive, { protect: { ratingA: 10, family: "UL 248-15 Class T" } });`),
    finds: [{ on: "", message: "This bank has no disconnect before lamp, so", fixes: "no fix" }],
  },
  {
    name: "what only its terminals are known of may be a contactor",
    plan: bank(`
      const contactor = part({ terminals: ["a", "b"], joins: [{ between: ["a", "b"] }] });
      cable({ from: house.positive, to: contactor.a, lengthFt: 2, gauge: 2 });
      out("lamp", contactor.b);`),
    finds: "nothing",
  },
  {
    name: "a disconnect in the negative cuts nothing off here",
    plan: bank(`
      const off = disconnect({ ratedA: 100 });
      cable({ from: house.negative, to: off.line, lengthFt: 2, gauge: 2 });
      out("lamp", house.positive, { returnTo: off.load });`),
    finds: [
      {
        on: "",
        message: "This bank has no disconnect before lamp, so",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a radio on half of a bank whose lamp is behind a disconnect",
    plan: `
      const [low, high] = ["low", "high"].map((name) => battery({ name, chemistry: "AGM", nominalV: 12, capacityAh: 100, internalMilliohm: 5 }));
      cable({ from: low.positive, to: high.negative, lengthFt: 1, gauge: 2 });
      const off = disconnect({ ratedA: 100 });
      cable({ from: high.positive, to: off.line, lengthFt: 2, gauge: 2 });
      circuit({ name: "lamp", from: off.load, returnTo: low.negative, load: 5, oneWayFt: 5, gauge: 10, protect: 10 });
      circuit({ name: "radio", from: low.positive, returnTo: low.negative, load: 5, oneWayFt: 5, gauge: 10, protect: 10 });`,
    finds: [
      {
        subject: "radio",
        on: "from",
        severity: "info",
        message: "Leaves the bank ahead of every disconnect, so radio cannot be cut off by hand",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a starter battery that only feeds a charger",
    plan: `
      const starter = battery({ chemistry: "flooded lead-acid", capacityAh: 70, internalMilliohm: 5 });
      const charger = dcDcCharger({ outputA: 20, isolated: true });
      circuit({ from: starter.positive, to: charger, oneWayFt: 5, gauge: 4, protect: 50 });`,
    finds: "nothing",
  },
  {
    name: "accepted with a reason",
    plan: bank(
      `out("lamp", house.positive);`,
      `, accept: { "disconnect/missing": "the plug at the bank is pulled by hand" }`,
    ),
    finds: [
      {
        on: "",
        message: "This bank has no disconnect",
        accepted: "the plug at the bank is pulled by hand",
        fixes: "no fix",
      },
    ],
  },
]);
