import { measureOf } from "../analysis/network/solver/nodal-equations.ts";
import { resistsCurrent } from "../model/internal-connections.ts";
import type { JudgedNetwork } from "../rules/rule.ts";
import { formatRounded } from "../rules/wording/format-number.ts";
import { listInWords } from "../rules/wording/part-in-words.ts";

/** The derivation of the currents and voltages of a network, as Markdown, with their accuracy. */
export function networkDerivation({ network, result: { scenarios } }: JudgedNetwork): string {
  const solved = scenarios.flatMap((one) => (one.state === "solved" ? [one] : []));
  const resisting = network.parts.filter(resistsCurrent).map(({ name }) => name);
  const except = resisting.length > 0 ? `, except in ${listInWords(resisting)}` : "";
  const exactness =
    solved.length > 0 ? solved.reduce((most, one) => Math.max(most, shareLeft(one)), 0) : undefined;
  return [
    "- The whole network is solved at once, for each scenario: at every terminal the currents add up to 0 (Kirchhoff's current law), and every conductor drops its current times its resistance (Ohm's law).",
    "- The resistance of a conductor is that at its operating temperature, which follows from its current.",
    `- A battery is its voltage at rest behind its internal resistance. Fuses, contacts and studs are taken as 0 Ω${except}.`,
    "- A charger, a controller or an alternator gives up to its limit and holds its output voltage; above that voltage it gives no current.",
    "- A load in watts, an inverter and a charger's input draw more current at lower voltage.",
    `- ${solved.length} of ${scenarios.length} scenarios were solved${exactness === undefined ? "" : `; the residual at any terminal is at most ${exponent(exactness)} of the greatest current`}.`,
  ].join("\n");
}

function shareLeft({ residualA, largestA }: { residualA: number; largestA: number }): number {
  return residualA / measureOf(largestA);
}

function exponent(share: number): string {
  return share === 0 ? "0" : share >= 0.001 ? formatRounded(share) : share.toExponential(0);
}
