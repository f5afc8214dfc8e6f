import { thinnestSufficient } from "../analysis/sizing.ts";
import type { Circuit, Conductor, Protection } from "../model/circuit.ts";
import { figure } from "./figures.ts";
import type { Change, ProposedFix } from "./finding.ts";
import { farEndRatingPath, ratingPath, sizePath } from "./written-at.ts";

/**
 * The repair for a conductor that is too thin for any reason: the thinnest made size that meets ampacity, drop and
 * protection together, and with it the rating where the stated one no longer fits. Never a thinner conductor.
 * Empty where no made size is enough, or where the plan has the right sizes already.
 */
export function sizedFixes(circuit: Circuit): ProposedFix[] {
  const sizing = thinnestSufficient(circuit);
  if (!sizing) return [];
  const changes: Change[] = [];
  const words: string[] = [];
  const { ratingA } = sizing;
  if (!sameSize(sizing.conductor, circuit.conductor)) {
    changes.push(setSize(circuit, sizing.conductor));
    words.push(sizeInWords(sizing.conductor));
  }
  if (ratingA !== undefined && circuit.protection && circuit.protection.ratingA !== ratingA) {
    changes.push(setRating(circuit, ratingA));
    words.push(`a ${figure(ratingA)} A ${deviceInWords(circuit.protection)}`);
  }
  if (changes.length === 0) return [];
  return [{ title: `Use ${words.join(" with ")}`, kind: "repair", changes }];
}

/** Sets the near-end rating, keeping the object form of `protect`: "Use a 50 A fuse". */
export function setRating(circuit: Circuit, ratingA: number): Change {
  return { do: "set", record: circuit.record, path: ratingPath(circuit), value: ratingA };
}

/** Sets the far-end rating, keeping the object form of `protectFarEnd`. */
export function setFarEndRating(circuit: Circuit, ratingA: number): Change {
  return { do: "set", record: circuit.record, path: farEndRatingPath(circuit), value: ratingA };
}

/** Sets the trade size in the system in which the plan states it. */
export function setSize(circuit: Circuit, conductor: Conductor): Change {
  const value = conductor.system === "awg" ? conductor.awg : conductor.mm2;
  return { do: "set", record: circuit.record, path: sizePath(circuit), value };
}

/** "6 AWG", "16 mm²", and for wires side by side "2 × 6 AWG". */
export function sizeInWords(conductor: Conductor): string {
  const one = conductor.system === "awg" ? `${conductor.awg} AWG` : `${conductor.mm2} mm²`;
  return conductor.parallel > 1 ? `${conductor.parallel} × ${one}` : one;
}

/** What the builder calls the protective device: a fuse, unless the plan says that it is a breaker. */
export function deviceInWords(protection: Protection | null): "fuse" | "breaker" {
  return protection?.family === "circuit breaker" ? "breaker" : "fuse";
}

function sameSize(one: Conductor, other: Conductor): boolean {
  return sizeInWords(one) === sizeInWords(other);
}
