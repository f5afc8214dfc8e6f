import { testRule } from "../rule.tester.ts";
import { networkShorted } from "./shorted.ts";

const bank = `
  const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 4 });
  const wire = (name, from, to) => cable({ name, from, to, lengthFt: 3, gauge: 4, protect: 60 });`;
const lamp = `circuit({ name: "lamp", from: house.positive, load: 5, oneWayFt: 5, gauge: 10, protect: 10 });`;

testRule(networkShorted, [
  { name: "a load between the poles", plan: `${bank} ${lamp}`, finds: "nothing" },
  {
    name: "the return on the bus bar that the positive is on",
    plan: `${bank} ${lamp} const bus = busBar({}); wire("feed", house.positive, bus.stud); wire("return", house.negative, bus.stud);`,
    finds: [
      {
        subject: "return",
        record: "return",
        on: "to",
        message:
          "Connects the positive side of the battery house directly to the negative side: a dead short. Take it out, or connect it to another terminal.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "positive and negative bus bar joined",
    plan: `${bank} ${lamp}
      const plus = busBar({ name: "plus" });
      const minus = busBar({ name: "minus" });
      wire("a", house.positive, plus.stud); wire("b", house.negative, minus.stud);
      wire("slip", minus.stud, plus.stud);`,
    finds: [
      {
        subject: "slip",
        record: "slip",
        on: "to",
        message: "Connects the positive side of the battery house directly to the negative side",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "two in series",
    plan: `${bank} ${lamp} const upper = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 4 });
      wire("link", house.positive, upper.negative);`,
    finds: "nothing",
  },
  {
    name: "two in series, and a second cable that closes the ring",
    plan: `${bank} const upper = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 4 });
      wire("link", house.positive, upper.negative); wire("slip", upper.positive, house.negative);`,
    finds: [
      {
        message:
          "Closes a ring of the battery house and the battery upper, plus to minus all round: a dead short. The battery upper is the wrong way round: swap its two cables. If they are meant to be in series, take one of these out.",
        on: "to",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the second of two in parallel turned round",
    plan: `${bank} ${lamp} const second = battery({ name: "second", chemistry: "AGM", capacityAh: 100, internalMilliohm: 4 });
      wire("a", house.positive, second.negative); wire("b", house.negative, second.positive);`,
    finds: [
      {
        subject: "b",
        message:
          "Closes a ring of the battery house and the battery second, plus to minus all round: a dead short. The battery second is the wrong way round",
        on: "to",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the first of two turned round, at bus bars with the loads",
    plan: `
      const first = battery({ name: "first", chemistry: "AGM", capacityAh: 100, internalMilliohm: 4 });
      const house = battery({ name: "house", chemistry: "AGM", capacityAh: 100, internalMilliohm: 4 });
      const wire = (name, from, to) => cable({ name, from, to, lengthFt: 3, gauge: 4, protect: 60 });
      const plus = busBar({}); const minus = busBar({});
      wire("a", first.negative, plus.stud); wire("b", first.positive, minus.stud);
      wire("c", house.positive, plus.stud); wire("d", house.negative, minus.stud); ${lamp}`,
    finds: [
      {
        message: "Closes a ring of ",
        values: {
          turned: { source: "the battery first", others: ["the battery house"], maybeInSeries: true },
        },
        on: "to",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a charger turned round",
    plan: `${bank} ${lamp} const shore = shoreCharger({ name: "shore", outputA: 20 });
      const plus = busBar({}); const minus = busBar({});
      wire("a", house.positive, plus.stud); wire("b", house.negative, minus.stud);
      wire("c", plus.stud, shore.negative); wire("d", minus.stud, shore.positive);`,
    finds: [
      {
        message: "Closes a ring of ",
        values: {
          turned: {
            source: "the shore charger shore",
            others: ["the shore charger shore"],
            maybeInSeries: false,
          },
        },
        on: "to",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "two in parallel",
    plan: `${bank} ${lamp} const second = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 4 });
      wire("a", house.positive, second.positive); wire("b", house.negative, second.negative);`,
    finds: "nothing",
  },
  {
    name: "several sources across one cable are told once",
    plan: `${bank} ${lamp} const second = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 4 });
      wire("a", house.positive, second.positive); wire("b", house.negative, second.negative);
      const bus = busBar({});
      wire("feed", house.positive, bus.stud); wire("slip", second.negative, bus.stud);`,
    finds: [
      {
        subject: "slip",
        on: "to",
        message: "Connects the positive side of the battery house directly to the negative side",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a part that joins the poles inside",
    plan: `${bank} ${lamp} const box = part({ terminals: ["a", "b"], joins: [{ between: ["a", "b"] }] });
      wire("one", house.positive, box.a); wire("other", house.negative, box.b);`,
    finds: [
      {
        subject: "other",
        on: "to",
        message: "Connects the positive side of the battery house",
        fixes: "no fix",
      },
    ],
  },
]);
