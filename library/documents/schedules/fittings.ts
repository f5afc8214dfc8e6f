import { crossSectionMm2 } from "../../analysis/copper-area.ts";
import type { Part } from "../../model/network.ts";
import type { Conductor } from "../../model/run.ts";
import type { Termination } from "../../plan/termination.ts";

/** The end of a conductor, as far as its fitting is concerned. */
export interface Fitted {
  /** As the plan states it. */
  readonly termination: Termination | undefined;
  /** The usual fitting there, if the plan states none; undefined if none is usual. */
  readonly usualFitting: UsualFitting | undefined;
}

export type UsualFitting = "ring terminal" | "ferrule" | "receptacle";

/**
 * The usual fitting of a conductor at a kind of part: a ring terminal at studs and screws, a ferrule at the clamps of chargers and
 * controllers, a receptacle on the tabs of small devices. Common practice, no source. The modules of a solar array bring their own
 * connectors.
 */
export function usualFittingAt(kind: Part["kind"], size: Conductor): UsualFitting | undefined {
  const usual = usualFittings[kind];
  // A receptacle for a tab of 6.3 mm is made for no thicker conductor.
  return usual === "receptacle" && crossSectionMm2({ ...size, parallel: 1 }) > mostOfReceptacleMm2
    ? "ring terminal"
    : usual;
}

const mostOfReceptacleMm2 = 6;

const usualFittings: Readonly<Record<Part["kind"], UsualFitting | undefined>> = {
  alternator: "ring terminal",
  battery: "ring terminal",
  breaker: "ring terminal",
  busBar: "ring terminal",
  chassis: "ring terminal",
  dcDcCharger: "ferrule",
  disconnect: "ring terminal",
  fuseHolder: "ring terminal",
  fusePanel: "ring terminal",
  inverter: "ring terminal",
  load: "receptacle",
  part: undefined,
  relay: "ring terminal",
  selectorSwitch: "ring terminal",
  shoreCharger: "ferrule",
  shunt: "ring terminal",
  solarArray: undefined,
  solarController: "ferrule",
};

/** The same in one sentence for the list of assumptions. */
export const usualFittingsInWords =
  "a ring terminal at studs and screws, a ferrule at chargers and solar controllers, a receptacle of 6.3 mm at small devices";

/**
 * The fitting at the end of a conductor: "ring terminal, stud M8", "ferrule", "receptacle, 6.3 mm"; one that the plan does not state
 * "usual: ferrule", "usual: ring terminal, stud not stated"; "not stated".
 */
export function fittingInWords(end: Fitted): string {
  const words = fittingToBuy(end);
  return words === undefined ? "not stated" : isUsual(end) ? `usual: ${words}` : words;
}

/** The same for the shop; undefined if none is known. */
export function fittingToBuy({ termination, usualFitting }: Fitted): string | undefined {
  if (termination === "screw clamp") return "ferrule";
  if (termination === "6.3 mm tab") return "receptacle, 6.3 mm";
  if (termination !== undefined) return `ring terminal, stud ${termination}`;
  if (usualFitting === "ring terminal") return "ring terminal, stud not stated";
  return usualFitting === "receptacle" ? "receptacle, 6.3 mm" : usualFitting;
}

/** The plan does not state it. */
export function isUsual({ termination, usualFitting }: Fitted): boolean {
  return termination === undefined && usualFitting !== undefined;
}

/** In a narrow column: "M8 ring", "ferrule", "6.3 mm receptacle", "usual: ring"; empty if none is known. */
export function fittingInShort({ termination, usualFitting }: Fitted): string | null {
  if (termination === "screw clamp") return "ferrule";
  if (termination === "6.3 mm tab") return "6.3 mm receptacle";
  if (termination !== undefined) return `${termination} ring`;
  return usualFitting === undefined ? null : `usual: ${usualFitting.replace(" terminal", "")}`;
}

export const usualFittingsNote =
  "A usual fitting is common practice, no source: look at the terminal before you buy or crimp, and state termination of the part.";
