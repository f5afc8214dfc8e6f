import { current, loadCurrent } from "../part-properties.ts";
import { amount } from "../property.ts";
import { isJudgedAs, type LoadFigures, loadFigures, ofEveryLoad } from "./consumer.ts";
import { notBelow, notBelowMinimum } from "./contradiction.ts";
import { definePart } from "./define-part.ts";
import { input, neededInput } from "./part-property.ts";
import { permittedFuse } from "./permitted-fuse.ts";
import { draws, poles } from "./poles.ts";

/** A motor is a load of its own. */
export const motor = definePart("motor", {
  kind: "load",
  called: { word: "motor", saidBy: /./ },
  role: "consumer",
  terminals: poles,
  ports: draws,
  properties: {
    runningA: neededInput(loadCurrent),
    startingA: neededInput(current),
    // A motor that needs longer than a minute does not start.
    startingS: input(amount("a time", "s", { from: 0.01, upTo: 60 })),
    ...ofEveryLoad,
    ...permittedFuse,
  },
  figures(given, context): LoadFigures {
    const { runningA, startingA, startingS } = given;
    return {
      draws: { as: "motor", runningA, startingA, ...(startingS !== undefined && { startingS }) },
      ...loadFigures(given, context),
      statedBy: "motor",
    };
  },
  contradictions: ({ runningA = 0, startingA, minimumV, maximumV }) => [
    ...notBelow("startingA", startingA, {
      what: "its running current",
      value: runningA,
      unit: "A",
    }),
    ...notBelowMinimum("maximumV", maximumV, minimumV),
  ],
  ...isJudgedAs,
});
