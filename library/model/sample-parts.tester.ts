import type * as plan from "../plan/index.ts";
import type { PartWord } from "./parts/index.ts";

/**
 * For tests: inputs for each function that makes a part. The first has only the required properties, the last has ratings too. A
 * new function does not compile until it is here.
 */
export const sampleParts: {
  readonly [Word in PartWord]: readonly [InputOf<Word>, ...InputOf<Word>[]];
} = {
  battery: [
    { chemistry: "AGM", capacityAh: 100 },
    { chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 3, maxDischargeA: 60, maxChargeA: 20 },
  ],
  busBar: [{}, { ratedA: 50, studs: 2 }],
  fusePanel: [{ positions: 12 }, { positions: 1, ratedA: 20, branchRatedA: 10 }],
  disconnect: [{ ratedA: 30 }],
  selectorSwitch: [{ ratedA: 250 }],
  relay: [{ ratedA: 140 }],
  fuseHolder: [
    { ratingA: 30 },
    { ratingA: 30, family: "ISO 8820-3 Type C", holderRatedA: 30, milliohm: 0.5 },
  ],
  breaker: [
    { ratingA: 30 },
    {
      ratingA: 30,
      openingTimes: [{ atPercent: 200, withinS: 60 }],
      letThroughA2s: 9_000,
      withstandA2s: 3_000,
      interruptingAtV: 24,
    },
  ],
  shunt: [{ ratedA: 100 }],
  inverter: [{ continuousW: 2_000 }, { continuousW: 500 }],
  dcDcCharger: [{ outputA: 20 }],
  alternator: [{ ratedA: 60 }],
  shoreCharger: [{ outputA: 20 }],
  solarArray: [{ openCircuitV: 22, shortCircuitA: 10, maxPowerV: 18, maxPowerA: 9 }],
  solarController: [{ maxInputV: 50, outputA: 20 }],
  chassis: [{ milliohm: 1 }],
  load: [{ currentA: 20 }, { powerW: 100 }],
  motor: [{ runningA: 4, startingA: 12 }],
  starterMotor: [{ crankingA: 250 }],
  part: [
    { terminals: ["in", "out"] },
    { terminals: ["in", "out"], joins: [{ between: ["in", "out"] }], ratedA: 50 },
  ],
};

type InputOf<Word extends PartWord> = Parameters<(typeof plan)[Word]>[0];
