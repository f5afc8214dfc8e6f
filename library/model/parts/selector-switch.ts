import { definePart, type PartOf } from "./define-part.ts";
import { contradictingContacts, ratedContacts } from "./rated-contacts.ts";

const inputs = ["input1", "input2", "input3", "input4"] as const;

export const selectorSwitch = definePart("selectorSwitch", {
  called: { word: "selector switch", saidBy: /selector|switch/i },
  role: "passes current on",
  terminals: {
    common: { side: "either", words: "the common terminal" },
    input1: { side: "either", words: "input 1", label: "1" },
    input2: { side: "either", words: "input 2", label: "2" },
    input3: { side: "either", words: "input 3", label: "3" },
    input4: { side: "either", words: "input 4", label: "4" },
  },
  opens: "by hand",
  positions: inputs.map((input) => ({ closed: true, selected: [input] })),
  inSeries: true,
  collectsAt: ["common", ...inputs],
  properties: ratedContacts,
  contradictions: contradictingContacts,
  inside: (_, { closed, selected = inputs }) =>
    inputs
      .filter((input) => closed && selected.includes(input))
      .map((input) => ({ between: [input, "common"] as const, ohm: 0 })),
});

export interface SelectorSwitchPart extends PartOf<typeof selectorSwitch> {}
