import { expect, test } from "vitest";
import type { DiagramElement } from "../../server/language/messages.ts";
import { elementsAt } from "./elements-at.ts";

const bus = "file:///bus.ts";

const at = (line: number, character: number) => ({ line, character });
const element = (id: string, start: [number, number], end: [number, number], uri = bus): DiagramElement => ({
  id,
  ...{ kind: "part", name: id, description: id, findings: [], box: { x: 0, y: 0, width: 1, height: 1 } },
  location: { uri, range: { start: at(...start), end: at(...end) } },
});

const elements = [
  element("fuse panel", [2, 6], [2, 40]),
  element("heater, positive", [4, 0], [9, 2]),
  element("heater, return", [4, 0], [9, 2]),
  element("inside the heater's call", [6, 2], [6, 30]),
  element("in another file", [4, 0], [9, 2], "file:///other.ts"),
];

test.each([
  { what: "inside a call", position: at(2, 20), ids: ["fuse panel"] },
  { what: "at its first character", position: at(2, 6), ids: ["fuse panel"] },
  { what: "behind its last character", position: at(2, 40), ids: ["fuse panel"] },
  { what: "before it", position: at(2, 5), ids: [] },
  { what: "after it", position: at(2, 41), ids: [] },
  { what: "in a call that makes several", position: at(5, 0), ids: ["heater, positive", "heater, return"] },
  { what: "in the innermost call", position: at(6, 10), ids: ["inside the heater's call"] },
  { what: "between calls", position: at(3, 0), ids: [] },
])("the cursor $what finds $ids", ({ position, ids }) => {
  expect(elementsAt(elements, bus, position)).toEqual(ids);
});

test("what was edited away in the text is found nowhere", () => {
  const [{ location: _, ...gone }] = elements as [DiagramElement];
  expect(elementsAt([gone], bus, at(2, 20))).toEqual([]);
});
