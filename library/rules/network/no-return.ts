import { endsAt } from "../../analysis/network/topology/ends-at.ts";
import { type DeadEnd, feedingOf } from "../../analysis/network/topology/feeding.ts";
import type { Network, NetworkConductor } from "../../model/network.ts";
import type { At, Related } from "../finding.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found, inNetwork, type JudgedNetwork } from "../rule.ts";
import {
  atEnd,
  atPart,
  conductorInWords,
  listInWords,
  partInWords,
  relatedConductor,
  relatedPart,
} from "../wording/part-in-words.ts";

export const noReturn = defineRule<Values>({
  id: "network/no-return",
  title: "No return path",
  formerTitles: ["No way back to the source"],
  severity: "error",
  why: "Current only flows in a closed loop: without a return to the source that feeds it, a device does not work, or its current returns through metal that was never meant to carry it.",
  sources: [ownRequirement("Kirchhoff's current law: all current that leaves a source returns to it.")],
  fixable: false,
  acceptable: true,
  ignoresLoads: "entirely",
  // Needs the connections. One finding for each component that leads nowhere, however much is connected to it.
  check: (plan) =>
    inNetwork(plan, check)
      // The return of a circuit that could not be read may be the only one that leads to a source.
      .filter(({ values: { isSource } }) => !isSource || plan.model.withoutCircuits.length === 0),
  message({ hanging, end, wrongSource, fed, isSource }) {
    if (fed && wrongSource)
      return `Its output feeds ${fed}, and its negative leads to ${wrongSource} only, so no current can return to it: connect the negative sides of the two.`;
    if (wrongSource)
      return `The negative of ${hanging} leads to ${wrongSource}, not back to the source that feeds it: connect it to the negative side of its own source.`;
    if (isSource)
      return "It feeds the network, but its negative terminal leads nowhere, so no current can return to it: connect that terminal to the return.";
    if (end === "itself")
      return "Its negative terminal leads nowhere, so no current can flow in it: connect it to the negative side of the source that feeds it.";
    return `Leads nowhere: the return of ${hanging} ends here and does not reach the negative side of a source. Connect it to one.`;
  },
});

interface Values {
  /** The part or parts without a way back, in words. */
  readonly hanging: string;
  /** Whether the finding is on the part itself or on the end of its return. */
  readonly end: "itself" | "hub";
  /** The source whose terminal the return leads to, if it is not the one that feeds it. */
  readonly wrongSource?: string;
  /** Of a charger with such an output: a part that it would feed. */
  readonly fed?: string;
  readonly isSource: boolean;
}

function check({ network, result }: JudgedNetwork): Found<Values>[] {
  const { sides } = result.topology;
  // A shorted source is left to network/shorted: its return paths are ambiguous.
  const isShorted = ({ hanging }: DeadEnd) => hanging.some(({ negative }) => sides[negative] === "both");
  const deadEnds = feedingOf(network).withoutReturn.filter((dead) => !isShorted(dead));
  return deadEnds.flatMap((dead) =>
    dead.wrongSource || !dead.hub
      ? dead.hanging.map((_, index) => onPart(network, dead, index))
      : [onHub(network, dead)],
  );
}

/** At the far end of the conductor at its negative terminal, else on the part itself. */
function onPart(network: Network, dead: DeadEnd, index: number): Found<Values> {
  const { part, negative, does } = dead.hanging[index] as DeadEnd["hanging"][number];
  const [conductor] = endsAt(network, negative);
  const at: At =
    dead.wrongSource && conductor
      ? atEnd(conductor, conductor.from === negative ? "to" : "from")
      : atPart(part);
  const related: Related[] = dead.wrongSource ? [relatedPart(dead.wrongSource)] : [];
  if (conductor) related.push(relatedConductor(conductor, itsReturn(conductor)));
  return {
    subject: part.name,
    at,
    values: {
      hanging: partInWords(part),
      end: "itself",
      ...(dead.wrongSource ? { wrongSource: partInWords(dead.wrongSource) } : {}),
      ...(dead.fed ? { fed: partInWords(dead.fed) } : {}),
      isSource: does === "feeds",
    },
    related,
  };
}

function onHub(network: Network, { hub, hanging }: DeadEnd): Found<Values> {
  const part = hub ?? (hanging[0] as DeadEnd["hanging"][number]).part;
  return {
    subject: part.name,
    at: atPart(part),
    values: {
      hanging: listInWords(hanging.map((pole) => partInWords(pole.part))),
      end: "hub",
      isSource: false,
    },
    related: hanging.slice(0, mostRelated).map((pole) => relatedPart(network.parts[pole.part.index] ?? part)),
  };
}

/** Twenty loads on one panel are given as a number, not one by one. */
const mostRelated = 5;

/** The return of a circuit is already named as one. */
function itsReturn(conductor: NetworkConductor): string {
  const words = conductorInWords(conductor);
  return conductor.role === "return" ? words : `${words}, its return`;
}
