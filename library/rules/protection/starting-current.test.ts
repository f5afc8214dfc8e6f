import { testRule } from "../rule.tester.ts";
import { startingCurrent } from "./starting-current.ts";

/*
 * Expected: a fuse that must have opened before the motor runs is a warning: a nuisance, and no fire. One that only may open is
 * information. ISO 8820-3 Type C, up to 30 A (partly read in makers' sheets, else recalled): 200 % 0.15 to 5 s, 350 % 0.04 to 0.5 s,
 * 600 % at most 0.1 s. Type E: 350 % 0.2 to 7 s, 600 % at most 1 s.
 */
const pump = (startingA: number, protect: string, more = "") => `
  build({ insulationC: 105 });
  const house = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 3 });
  const pump = motor({ runningA: 8, startingA: ${startingA}${more} });
  circuit({ from: house.positive, returnTo: house.negative, to: pump, oneWayFt: 4, gauge: 10, protect: { ratingA: 10, ${protect} } });`;
const typeC = `family: "ISO 8820-3 Type C"`;
const typeE = `family: "ISO 8820-3 Type E"`;

testRule(startingCurrent, [
  { name: "no family is stated", plan: pump(60, ""), finds: "nothing" },
  {
    name: "an engine is cranked for seconds",
    plan: `build({ insulationC: 105 });
      const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 3 });
      const main = fuseHolder({ ratingA: 100, family: "ISO 8820-5 Type SF 51", on: house.positive });
      const starter = starterMotor({ crankingA: 350 });
      circuit({ name: "crank", from: main.load, returnTo: house.negative, to: starter, oneWayFt: 4, gauge: 1 });`,
    finds: [
      {
        subject: "main",
        on: "ratingA",
        message:
          "The 100 A fuse opens within 5 s (unconfirmed figure) at 350 A, the start of starter (5 s, as usual)",
        fixes: [{ title: "Use a 150 A fuse", gives: { ratingA: 150 } }],
      },
    ],
  },
  {
    name: "an engine, and a fuse whose gates do not reach its current: the slowest family opens after a second",
    plan: `build({ insulationC: 105 });
      const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 3 });
      const starter = starterMotor({ crankingA: 240 });
      circuit({ name: "crank", from: house.positive, returnTo: house.negative, to: starter, oneWayFt: 4, gauge: 1,
        protect: { ratingA: 60, family: "UL 248-15 Class T", interruptingA: 20_000 } });`,
    finds: [
      {
        subject: "crank",
        on: "protect.ratingA",
        severity: "warning",
        message:
          "The 60 A fuse usually opens after 0.876 s (unconfirmed figure) at 240 A, the start of starter (5 s, as usual)",
        fixes: [{ title: "Use a 100 A fuse", gives: { "protect.ratingA": 100 } }],
      },
    ],
  },
  { name: "twice the rating, where an ordinary one takes longer", plan: pump(20, typeC), finds: "nothing" },
  {
    name: "just below the multiple at which it must open in time",
    plan: pump(34.9, typeC),
    finds: [
      {
        subject: "pump",
        record: "pump",
        on: "startingA",
        severity: "info",
        message:
          "The 10 A fuse (circuit 4) may open after 0.04 s (unconfirmed figure) at 34.9 A, the start of pump (0.5 s, as usual): state how long it takes (startingS), use a slower family, or a greater rating on a conductor for it.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the slower family at four and a half times the rating",
    plan: pump(45, typeE),
    finds: [
      {
        on: "startingA",
        severity: "info",
        message: "The 10 A fuse (circuit 4) may open after 0.04 s",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "at that multiple",
    plan: pump(35, typeC),
    finds: [
      {
        subject: "circuit 4",
        on: "protect.ratingA",
        severity: "warning",
        message:
          "The 10 A fuse opens within 0.5 s (unconfirmed figure) at 35 A, the start of pump (0.5 s, as usual): use a 15 A fuse.",
        fixes: [{ title: "Use a 15 A fuse", gives: { "protect.ratingA": 15 } }],
      },
    ],
  },
  {
    name: "a greater rating needs a thicker conductor",
    plan: `
      build({ insulationC: 75 });
      const house = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 3 });
      const pump = motor({ runningA: 8, startingA: 60 });
      circuit({ from: house.positive, returnTo: house.negative, to: pump, oneWayFt: 4, gauge: 16, protect: { ratingA: 10, ${typeC} } });`,
    finds: [
      {
        on: "protect.ratingA",
        message: "The 10 A fuse opens within 0.1 s",
        fixes: [{ title: "Use 14 AWG with a 20 A fuse", gives: { gauge: 14, "protect.ratingA": 20 } }],
      },
    ],
  },
  { name: "a slower family", plan: pump(35, typeE), finds: "nothing" },
  {
    name: "the motor starts more quickly than the fuse opens",
    plan: pump(35, typeC, ", startingS: 0.03"),
    finds: "nothing",
  },
  {
    name: "the motor needs longer than the fuse holds at least",
    plan: pump(20, typeC, ", startingS: 1"),
    finds: [
      {
        on: "protect.ratingA",
        severity: "info",
        message: "The 10 A fuse may open after 0.15 s at 20 A, the start of pump (1 s)",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the slower family at a long start",
    plan: pump(60, typeE, ", startingS: 1"),
    finds: [
      {
        on: "protect.ratingA",
        severity: "warning",
        message: "The 10 A fuse opens within 1 s at 60 A, the start of pump (1 s)",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "two batteries share the start: 35 A through the fuse of each",
    plan: pair(70),
    finds: [
      {
        subject: "one",
        on: "ratingA",
        message: "The 10 A fuse opens within 0.5 s",
        fixes: [{ title: "Use a 15 A fuse", gives: { ratingA: 15 } }],
      },
      {
        subject: "other",
        on: "ratingA",
        message: "The 10 A fuse opens within 0.5 s",
        fixes: [{ title: "Use a 15 A fuse", gives: { ratingA: 15 } }],
      },
    ],
  },
  { name: "two batteries share the start: 20 A through each", plan: pair(40), finds: "nothing" },
  {
    name: "a lesser motor that needs longer",
    plan: `${behindOneFuse("motor({ runningA: 4, startingA: 60, startingS: 0.05 })", "motor({ runningA: 4, startingA: 36 })")}
      scenario({ name: "one after the other" });`,
    finds: [
      {
        subject: "main",
        on: "ratingA",
        message: "The 10 A fuse opens within 0.5 s (unconfirmed figure) at 40 A",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "with all that runs beside it, though no scenario starts it",
    plan: behindOneFuse("motor({ runningA: 2, startingA: 30 })", "load({ currentA: 5 })"),
    finds: [
      {
        subject: "main",
        on: "ratingA",
        message:
          'The 10 A fuse opens within 0.5 s (unconfirmed figure) at 35 A in "everything on, pump starting", the start of pump (0.5 s, as usual): use a 15 A fuse.',
        fixes: [{ title: "Use a 15 A fuse", gives: { ratingA: 15 } }],
      },
    ],
  },
  {
    name: "with a little less beside it",
    plan: behindOneFuse("motor({ runningA: 2, startingA: 30 })", "load({ currentA: 4.9 })"),
    finds: [
      {
        on: "startingA",
        severity: "info",
        message: "The 10 A fuse (main) may open after 0.04 s (unconfirmed figure) at 34.9 A",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "with the other loads of its scenario, through the fuse of both",
    plan: `
      build({ insulationC: 105 });
      const house = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 3 });
      const main = fuseHolder({ ratingA: 20, family: "ISO 8820-3 Type C" });
      cable({ from: house.positive, to: main.line, lengthFt: 1, gauge: 8 });
      const pump = motor({ runningA: 6, startingA: 60 });
      circuit({ name: "pump", from: main.load, returnTo: house.negative, to: pump, oneWayFt: 4, gauge: 10, protect: 25 });
      const oven = circuit({ name: "oven", from: main.load, returnTo: house.negative, load: 11, oneWayFt: 4, gauge: 10, protect: 15 });
      scenario({ name: "start", on: [oven], starting: [pump] });`,
    finds: [
      {
        subject: "main",
        on: "ratingA",
        message: 'The 20 A fuse opens within 0.5 s (unconfirmed figure) at 71 A in "start"',
        fixes: [{ title: "Use a 25 A fuse", gives: { ratingA: 25 } }],
      },
    ],
  },
]);

function pair(startingA: number): string {
  return `
    build({ insulationC: 105 });
    const [left, right] = [1, 2].map(() => battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 }));
    const bus = busBar({ side: "positive" });
    const back = busBar({ side: "negative" });
    const one = fuseHolder({ ratingA: 10, family: "ISO 8820-3 Type C", on: left.positive });
    const other = fuseHolder({ ratingA: 10, family: "ISO 8820-3 Type C", on: right.positive });
    cable({ from: one.load, to: bus.stud, lengthFt: 1, gauge: 8 });
    cable({ from: other.load, to: bus.stud, lengthFt: 1, gauge: 8 });
    cable({ from: left.negative, to: back.stud, lengthFt: 1, gauge: 8 });
    cable({ from: right.negative, to: back.stud, lengthFt: 1, gauge: 8 });
    const pump = motor({ runningA: 5, startingA: ${startingA} });
    circuit({ from: bus.stud, returnTo: back.stud, to: pump, oneWayFt: 4, gauge: 10, protect: 30 });`;
}

function behindOneFuse(pump: string, beside: string): string {
  return `
    build({ insulationC: 105 });
    const house = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 3 });
    const main = fuseHolder({ ratingA: 10, family: "ISO 8820-3 Type C", on: house.positive });
    const pump = ${pump};
    const beside = ${beside};
    circuit({ from: main.load, returnTo: house.negative, to: pump, oneWayFt: 4, gauge: 10, protect: 30 });
    circuit({ from: main.load, returnTo: house.negative, to: beside, oneWayFt: 4, gauge: 10, protect: 30 });`;
}
