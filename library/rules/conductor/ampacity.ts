import { ampacityTables } from "../../analysis/ampacity.ts";
import type { AmpacityFactor } from "../../analysis/circuit-result.ts";
import { designCurrentA } from "../../analysis/design-current.ts";
import { ambientCorrection } from "../../standards/ambient-nfpa70.ts";
import { note1EngineSpace, note2Bundling } from "../../standards/ampacity-33cfr183-425.ts";
import { bundling, engineSpace60C } from "../../standards/ampacity-iso10133.ts";
import { coolestEnd } from "../../standards/terminal-temperature.ts";
import { runFixes, sizeInWords, whyNoSize } from "../fixes/sized-fix.ts";
import { atProperty, defineRule, perRun, soleDeviceOf } from "../rule.ts";
import { estimateInWords } from "../wording/estimate-in-words.ts";
import { exceeds, formatDistinctWithUnit } from "../wording/format-number.ts";
import { sizePath } from "../wording/property-paths.ts";
import { ampacitySourceInWords } from "../wording/source-in-words.ts";
import { noSizeIsEnough, wayOut } from "../wording/way-out.ts";

export const ampacity = defineRule<Values>({
  id: "conductor/ampacity",
  title: "Conductor ampacity exceeded",
  formerTitles: ["Conductor too thin for its current"],
  severity: "error",
  why: "A conductor above its ampacity gets hotter than its insulation withstands, which then softens, shorts and burns.",
  sources: [
    ...ampacityTables,
    note1EngineSpace.source,
    note2Bundling.source,
    engineSpace60C.source,
    bundling.source,
    ambientCorrection.source,
    coolestEnd,
  ],
  fixable: true,
  acceptable: true,
  restsOn: "currents",
  neverFolded: true,
  // Needs the ampacity and the design current. A place as hot as the insulation may get is left to conductor/ambient.
  check: (plan) =>
    perRun<Values>(plan, ({ circuit, result: { ampacity } }) => {
      const size = sizeInWords(circuit.conductor);
      const at = atProperty(circuit, ...sizePath(circuit));
      if (!ampacity.judged) {
        if (ampacity.why === "place-too-hot") return [];
        return [{ at, values: { judged: false, size, columnC: ampacity.columnC } }];
      }
      const loadA = designCurrentA(circuit);
      if (!exceeds(loadA, ampacity.ampacityA)) return [];
      const fixes = runFixes(plan, circuit, "conductor/ampacity");
      const values: Values = {
        judged: true,
        size,
        loadA,
        ...(circuit.loadIsOf && { alone: circuit.loadIsOf.name }),
        estimate: estimateInWords(circuit.estimate),
        ampacityA: ampacity.ampacityA,
        columnC: ampacity.columnC,
        engineSpace: circuit.engineSpace,
        // The factors do not count at a terminal.
        factors: ampacity.terminal
          ? []
          : ampacity.factors.filter(({ factor }) => factor !== 1).map(({ what }) => what),
        atTerminal: ampacity.terminal !== undefined,
        source: ampacitySourceInWords(ampacity),
        wayOut: wayOut(fixes, whyNoSize(circuit, noSizeIsEnough)),
      };
      return [{ at, values, related: soleDeviceOf(circuit), fixes }];
    }),
  message(values) {
    if (!values.judged)
      return `${values.size} is not judged: no table gives its ampacity for ${values.columnC} °C insulation in this place.`;
    const [loadText, allowedText] = formatDistinctWithUnit(values.loadA, values.ampacityA, "A");
    const draws = values.alone === undefined ? "the load draws" : `${values.alone} alone draws`;
    const where = values.factors.map((what) => factorInWords(what, values)).join(" and ");
    const column = values.atTerminal ? "" : `${values.columnC} °C, `;
    return `${values.size} may carry ${allowedText}${where && ` ${where}`} (${column}${values.source}), ${draws} ${loadText}${values.estimate}: ${values.wayOut}.`;
  },
});

type Values =
  | { readonly judged: false; readonly size: string; readonly columnC: number }
  | {
      readonly judged: true;
      readonly size: string;
      /** With constant powers at the lowest voltage at which they work. */
      readonly loadA: number;
      readonly estimate: string;
      /** The device that draws it alone, if it is another than the load of the circuit. */
      readonly alone?: string;
      readonly ampacityA: number;
      /** The column of the insulation. */
      readonly columnC: number;
      /** A terminal lowers it; the source names the terminal. */
      readonly atTerminal: boolean;
      readonly engineSpace: boolean;
      /** Those that reduce the ampacity. */
      readonly factors: readonly AmpacityFactor["what"][];
      readonly source: string;
      readonly wayOut: string;
    };

/** The ambient equation replaces an engine space's own factor if it is milder. */
function factorInWords(what: AmpacityFactor["what"], { engineSpace }: { engineSpace: boolean }): string {
  if (what === "bundling") return "in this bundle";
  return engineSpace ? "in an engine space" : "in this ambient";
}
