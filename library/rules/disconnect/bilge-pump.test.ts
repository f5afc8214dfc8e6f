import { testRule } from "../rule.tester.ts";
import { bilgePump } from "./bilge-pump.ts";

/** A main switch with lamps behind it, and a pump on a circuit. */
const boat = (rest: string) => `
  const bank = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 });
  const mainSwitch = disconnect({ name: "main switch", ratedA: 150 });
  cable({ name: "battery to switch", from: bank.positive, to: mainSwitch.line, lengthFt: 2, gauge: 2, protect: 125 });
  const behind = { from: mainSwitch.load, returnTo: bank.negative, oneWayFt: 6, gauge: 12, protect: 10 };
  const ahead = { ...behind, from: bank.positive };
  circuit({ ...behind, name: "lamps", load: 3 });
  ${rest}`;

const message =
  "Is off as soon as the main switch is (common practice, no source): feed an automatic bilge pump ahead of the switch, with a fuse of its own at the battery.";

// Common practice, no source: a device that must run unattended is fed ahead of the main switch.
testRule(bilgePump, [
  {
    name: "ahead of the main switch",
    plan: boat(`circuit({ ...ahead, name: "bilge pump", load: 4 });`),
    finds: "nothing",
  },
  {
    name: "behind the main switch",
    plan: boat(`circuit({ ...behind, name: "bilge pump", load: 4 });`),
    finds: [{ subject: "bilge pump", record: "bilge pump", on: "", message, fixes: "no fix" }],
  },
  {
    name: "a purpose that is stated, under a name in another language",
    plan: boat(`circuit({ ...behind, name: "Lenzpumpe", load: 4, purpose: "bilge pump" });`),
    finds: [{ subject: "Lenzpumpe", record: "Lenzpumpe", on: "", message, fixes: "no fix" }],
  },
  {
    name: "a motor whose purpose is stated",
    plan: boat(`
      const pump = motor({ name: "pompe de cale", runningA: 4, startingA: 9, purpose: "bilge pump" });
      circuit({ ...behind, name: "arrière", to: pump });`),
    finds: [{ subject: "pompe de cale", record: "pompe de cale", on: "", message, fixes: "no fix" }],
  },
  {
    name: "another purpose counts more than the name",
    plan: boat(`circuit({ ...behind, name: "bilge pump counter", load: 0.1, purpose: "other" });`),
    finds: "nothing",
  },
  {
    name: "named in the manner of variables",
    plan: boat(`
      const bilgePump = motor({ runningA: 4, startingA: 9 });
      circuit({ ...behind, name: "aft", to: bilgePump });`),
    finds: [{ subject: "bilgePump", record: "bilgePump", on: "", message, fixes: "no fix" }],
  },
  {
    name: "the circuit names the pump",
    plan: boat(`
      const pump = motor({ name: "pump", runningA: 4, startingA: 9 });
      circuit({ ...behind, name: "bilge pump, aft", to: pump });`),
    finds: [{ subject: "pump", record: "pump", on: "", message, fixes: "no fix" }],
  },
  {
    name: "a second feed leads round the switch",
    plan: boat(`
      const pump = motor({ name: "bilge pump", runningA: 4, startingA: 9 });
      circuit({ ...behind, name: "by hand", to: pump });
      cable({ name: "float switch", from: bank.positive, to: pump.positive, lengthFt: 6, gauge: 12, protect: 10 });`),
    finds: "nothing",
  },
  {
    name: "a switch of its own",
    plan: boat(`
      const own = disconnect({ name: "pump switch", ratedA: 20 });
      cable({ name: "pump feed", from: bank.positive, to: own.line, lengthFt: 2, gauge: 12, protect: 10 });
      circuit({ from: own.load, returnTo: bank.negative, name: "bilge pump", load: 4, oneWayFt: 6, gauge: 12, protect: 10 });`),
    finds: "nothing",
  },
  {
    name: "a pump that a hand works, a blower and an alarm are none",
    plan: boat(`
      circuit({ ...behind, name: "manual bilge pump light", load: 1 });
      circuit({ ...behind, name: "bilge blower", load: 4 });
      circuit({ ...behind, name: "bilge pump alarm", load: 1 });`),
    finds: "nothing",
  },
  {
    name: "accepted with a reason",
    plan: boat(
      `circuit({ ...behind, name: "bilge pump", load: 4, accept: { "disconnect/bilge-pump": "she lives ashore" } });`,
    ),
    finds: [{ subject: "bilge pump", on: "", message, accepted: "she lives ashore", fixes: "no fix" }],
  },
]);
