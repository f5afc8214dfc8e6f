import { loadCurrent, power } from "../part-properties.ts";
import { amount } from "../property.ts";
import { isJudgedAs, type LoadFigures, loadFigures, ofEveryLoad } from "./consumer.ts";
import { notBelowMinimum } from "./contradiction.ts";
import { definePart, type PartOf } from "./define-part.ts";
import { input } from "./part-property.ts";
import { permittedFuse } from "./permitted-fuse.ts";
import { draws, poles } from "./poles.ts";

export const load = definePart("load", {
  // The name of a load is enough.
  called: { word: "load", saidBy: /./ },
  role: "consumer",
  terminals: poles,
  ports: draws,
  properties: {
    currentA: input(loadCurrent),
    powerW: input(power),
    // Less than a milliohm is a short circuit: 12 V drive more than 10,000 A through it.
    resistanceOhm: input(amount("a resistance", "Ω", { from: 0.001, upTo: 1_000_000 })),
    ...ofEveryLoad,
    ...permittedFuse,
  },
  choices: [{ ways: [["currentA"], ["powerW"], ["resistanceOhm"]], needed: "its draw" }],
  figures(given, context): LoadFigures {
    const { currentA, powerW, resistanceOhm } = given;
    const draws =
      currentA !== undefined
        ? ({ as: "current", currentA } as const)
        : powerW !== undefined
          ? ({ as: "power", powerW } as const)
          : ({ as: "resistance", ohm: resistanceOhm! } as const);
    return { draws, ...loadFigures(given, context), statedBy: "load" };
  },
  contradictions: ({ minimumV, maximumV }) => notBelowMinimum("maximumV", maximumV, minimumV),
  ...isJudgedAs,
});

export interface LoadPart extends PartOf<typeof load> {}
