import { current, nominalVoltage } from "../part-properties.ts";
import { isJudgedAs, type LoadFigures, loadFigures, maximumVoltage } from "./consumer.ts";
import { notBelowMinimum } from "./contradiction.ts";
import { definePart } from "./define-part.ts";
import { neededInput, optional } from "./part-property.ts";
import { draws, poles } from "./poles.ts";
import { minimumOfDevice } from "./silences.ts";

/** A load of its own that draws only while it starts: in every scenario that lasts, the engine runs or is off. */
export const starterMotor = definePart("starterMotor", {
  kind: "load",
  called: { word: "starter motor", saidBy: /./ },
  role: "consumer",
  terminals: poles,
  ports: draws,
  properties: {
    crankingA: neededInput(current),
    minimumV: optional(nominalVoltage, {
      words: "minimum voltage of the device",
      silentWithout: minimumOfDevice,
    }),
    maximumV: maximumVoltage,
  },
  contradictions: ({ minimumV, maximumV }) => notBelowMinimum("maximumV", maximumV, minimumV),
  figures: ({ crankingA, minimumV, maximumV }, context): LoadFigures => ({
    draws: { as: "motor", runningA: 0, startingA: crankingA },
    ...loadFigures(
      {
        minimumV,
        maximumV,
        critical: undefined,
        purpose: undefined,
        use: undefined,
        continuous: false,
        dropLimitPercent: undefined,
      },
      context,
    ),
    statedBy: "starterMotor",
  }),
  ...isJudgedAs,
});
