import type { Conductor, Protection } from "../../model/circuit.ts";
import type { NetworkConductor } from "../../model/network.ts";
import type { InsulationC } from "../../plan/sizes.ts";
import type { Termination } from "../../plan/termination.ts";

/**
 * One conductor as it is cut, ended, labelled and laid: of the network, or one of the two of a circuit that stands alone.
 * `parallel` equal wires side by side are one conductor here and as many pieces in the cut list.
 */
export interface Wire {
  /** Index of its record in the plan. */
  readonly record: number;
  readonly name: string;
  readonly role: NetworkConductor["role"];
  /** Index in the network's conductors; undefined for a circuit that stands alone. */
  readonly conductor: number | undefined;
  readonly from: WireEnd;
  readonly to: WireEnd;
  readonly colour: string;
  readonly size: Conductor;
  /** As planned, m. */
  readonly lengthM: number;
  /** With the build's slack and the allowance at both ends, rounded up to whole 10 mm (AWG: to whole inches), m. */
  readonly cutLengthM: number;
  readonly insulationC: InsulationC;
  readonly insulationStated: boolean;
  /** What the builder wants printed on its labels beside the number. */
  readonly label: string;
}

export interface WireEnd {
  /** The name of a part; for the far end of a lone circuit its own name, and "" where the plan does not say. */
  readonly part: string;
  /** "positive", "stud"; "" where there is none to name. */
  readonly terminal: string;
  readonly termination: Termination | undefined;
  readonly torqueNm: number | undefined;
  /** The device in the wire near this end. */
  readonly protection: Protection | null;
}
