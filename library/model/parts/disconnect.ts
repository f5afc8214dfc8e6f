import { definePart, type PartOf } from "./define-part.ts";
import { contradictingContacts, ratedContacts } from "./rated-contacts.ts";

export const disconnect = definePart("disconnect", {
  called: { word: "disconnect", saidBy: /disconnect|switch|isolator/i },
  role: "passes current on",
  terminals: {
    line: { side: "either", words: "the line side" },
    load: { side: "either", words: "the load side" },
  },
  opens: "by hand",
  inSeries: true,
  properties: ratedContacts,
  contradictions: contradictingContacts,
  inside: (_, { closed }) => (closed ? [{ between: ["line", "load"], ohm: 0 }] : []),
});

export interface DisconnectPart extends PartOf<typeof disconnect> {}
