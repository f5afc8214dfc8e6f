import { testRule } from "../rule.tester.ts";
import { sharedAlarm } from "./shared-alarm.ts";

/** A holder with a fuse, behind which circuits begin. */
const caravan = (rest: string) => `
  const bank = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 });
  const sockets = fuseHolder({ name: "socket fuse", ratingA: 15, on: bank.positive });
  const behind = { from: sockets.load, returnTo: bank.negative, oneWayFt: 6, gauge: 12 };
  ${rest}`;

// Common practice, no source: an alarm has a fuse of its own.
testRule(sharedAlarm, [
  {
    name: "a fuse of its own",
    plan: caravan(`
      circuit({ ...behind, name: "sockets", load: 8 });
      circuit({ ...behind, name: "gas alarm", load: 0.3, protect: 2 });`),
    finds: "nothing",
  },
  {
    name: "on the fuse of the sockets",
    plan: caravan(`
      circuit({ ...behind, name: "sockets", load: 8 });
      circuit({ ...behind, name: "gas alarm", load: 0.3 });`),
    finds: [
      {
        subject: "gas alarm",
        record: "gas alarm",
        on: "",
        message:
          "Shares the 15 A socket fuse with sockets: a fault there silences it (common practice, no source). Give the alarm a fuse of its own.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a purpose that is stated, under a name in another language",
    plan: caravan(`
      circuit({ ...behind, name: "Steckdosen", load: 8 });
      circuit({ ...behind, name: "Gasmelder", load: 0.3, purpose: "alarm" });`),
    finds: [
      {
        subject: "Gasmelder",
        record: "Gasmelder",
        on: "",
        message:
          "Shares the 15 A socket fuse with Steckdosen: a fault there silences it (common practice, no source). Give the alarm a fuse of its own.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the other device has a fuse of its own behind the shared one",
    plan: caravan(`
      circuit({ ...behind, name: "sockets", load: 8, protect: 10 });
      circuit({ ...behind, name: "smoke detector", load: 0.3 });`),
    finds: "nothing",
  },
  {
    name: "alarms on one fuse among themselves",
    plan: caravan(`
      circuit({ ...behind, name: "smokeAlarm", load: 0.2 });
      circuit({ ...behind, name: "gas detector", load: 0.3 });`),
    finds: "nothing",
  },
  {
    name: "accepted with a reason",
    plan: caravan(`
      circuit({ ...behind, name: "sockets", load: 8 });
      circuit({ ...behind, name: "gas alarm", load: 0.3, accept: { "protection/shared-alarm": "it has a battery" } });`),
    finds: [
      {
        subject: "gas alarm",
        on: "",
        message: "Shares the 15 A socket fuse",
        accepted: "it has a battery",
        fixes: "no fix",
      },
    ],
  },
]);
