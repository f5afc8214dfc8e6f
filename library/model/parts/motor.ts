import { current, loadCurrent } from "../part-properties.ts";
import { isJudgedAs, type LoadFigures, loadFigures, ofEveryLoad } from "./consumer.ts";
import { notBelow } from "./contradiction.ts";
import { definePart } from "./define-part.ts";
import { neededInput } from "./part-property.ts";
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
    ...ofEveryLoad,
  },
  figures(given, context): LoadFigures {
    const { runningA, startingA } = given;
    return {
      draws: { as: "motor", runningA, startingA },
      ...loadFigures(given, context),
      statedBy: "motor",
    };
  },
  contradictions: ({ runningA = 0, startingA }) =>
    notBelow("startingA", startingA, {
      what: "its running current",
      value: runningA,
      unit: "A",
    }),
  ...isJudgedAs,
});
