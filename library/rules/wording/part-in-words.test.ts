import { expect, test } from "vitest";
import type { Network, NetworkConductor, Part } from "../../model/network.ts";
import {
  atEnd,
  conductorInWords,
  kindInWords,
  listInWords,
  partInWords,
  relatedPart,
  scenarioInWords,
  terminalInWords,
} from "./part-in-words.ts";

/** Only the fields used for wording. */
const part = (kind: Part["kind"], name: string, more: object = {}) =>
  ({ kind, name, record: 3, index: 0, ...more }) as unknown as Part;
const conductor = (role: NetworkConductor["role"], name: string) =>
  ({ role, name, record: 7 }) as unknown as NetworkConductor;

test.each([
  [part("battery", "house"), "the battery house"],
  [part("battery", "starter battery"), "the starter battery"],
  [part("battery", "House bank"), "the House bank"],
  [part("busBar", "main"), "the bus bar main"],
  [part("busBar", "Negative bus"), "the Negative bus"],
  [part("dcDcCharger", "b2b"), "the DC-DC charger b2b"],
  [part("load", "Fridge", { draws: { as: "current", currentA: 4 } }), "Fridge"],
  [part("part", "Relay"), "the Relay"],
])("a part by kind and name: $name", (one, words) => {
  expect(partInWords(one)).toBe(words);
});

test("a motor is called one, any other load a load", () => {
  expect(
    kindInWords(
      part("load", "Winch", { statedBy: "motor", draws: { as: "motor", runningA: 4, startingA: 9 } }),
    ),
  ).toBe("motor");
  expect(kindInWords(part("load", "Lamp", { statedBy: "load", draws: { as: "power", powerW: 4 } }))).toBe(
    "load",
  );
});

test.each([
  [conductor("cable", "feed"), "the cable feed"],
  [conductor("cable", "Inverter cable"), "the Inverter cable"],
  [conductor("positive", "Fridge"), "the positive conductor of Fridge"],
  [conductor("return", "Fridge"), "the return of Fridge"],
])("a conductor by what it is for", (one, words) => {
  expect(conductorInWords(one)).toBe(words);
});

test("terminals and scenarios of a network", () => {
  const network = {
    terminals: [
      { part: 0, name: "positive", side: "positive" },
      { part: 1, name: "stud", side: "either" },
      { part: 2, name: "coil", side: "either" },
    ],
    parts: [part("battery", "house"), part("busBar", "main"), part("part", "Relay")],
    scenarios: [{ name: "charging, nothing on" }],
  } as unknown as Network;
  expect([0, 1, 2].map((terminal) => terminalInWords(network, terminal))).toEqual([
    "the positive terminal of the battery house",
    "the bus bar main",
    "the terminal coil of the Relay",
  ]);
  expect(scenarioInWords(network, 0)).toBe('in "charging, nothing on"');
});

test("lists end in and, long ones in how many more", () => {
  expect(listInWords([])).toBe("");
  expect(listInWords(["a"])).toBe("a");
  expect(listInWords(["a", "b"])).toBe("a and b");
  expect(listInWords(["a", "b", "c", "d", "e"])).toBe("a, b, c, d and e");
  expect(listInWords(["a", "b", "c", "d", "e", "f"])).toBe("a, b, c, d and 2 more");
  expect(listInWords(["lamp, bow", "lamp, stern", "radio"])).toBe("lamp, bow; lamp, stern and radio");
});

test("places: the terminal that a cable names, a circuit as a whole where it names none", () => {
  expect(atEnd(conductor("cable", "feed"), "to")).toEqual({ record: 7, path: ["to"] });
  expect(atEnd(conductor("positive", "Fridge"), "from")).toEqual({ record: 7, path: ["from"] });
  expect(atEnd(conductor("return", "Fridge"), "to")).toEqual({ record: 7, path: ["returnTo"] });
  expect(atEnd(conductor("return", "Fridge"), "from")).toEqual({ record: 7, path: [] });
  expect(relatedPart(part("battery", "house"))).toEqual({
    at: { record: 3, path: [] },
    text: "The battery house",
  });
});
