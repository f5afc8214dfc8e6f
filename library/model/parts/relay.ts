import { definePart, type PartOf } from "./define-part.ts";
import { contradictingContacts, ratedContacts } from "./rated-contacts.ts";

export const relay = definePart("relay", {
  called: { word: "relay", saidBy: /relay|contactor|isolator|combiner/i },
  role: "passes current on",
  terminals: {
    line: { side: "either", words: "the line side" },
    load: { side: "either", words: "the load side" },
  },
  opens: "by control",
  positions: [{ closed: false }],
  inSeries: true,
  properties: ratedContacts,
  contradictions: contradictingContacts,
  inside: (_, { closed }) => (closed ? [{ between: ["line", "load"], ohm: 0 }] : []),
});

export interface RelayPart extends PartOf<typeof relay> {}
