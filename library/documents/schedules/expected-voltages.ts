import { portsOf } from "../../analysis/network/topology/ports.ts";
import type { SolvedScenario } from "../../analysis/network-result.ts";
import { withoutLengthTo } from "../../analysis/unknown-lengths.ts";
import type { Judgement } from "../../judge.ts";
import type { Network, Part } from "../../model/network.ts";
import { minimumVoltageOf } from "../../model/part-roles.ts";
import type { JudgedNetwork } from "../../rules/rule.ts";
import { partInWords, terminalNameInWords } from "../../rules/wording/part-in-words.ts";

/**
 * The predicted voltage at each device, to compare with a meter. In the requested scenario; without one, in the first that lasts
 * and could be solved, and for a device that is off there, in the first where it is on.
 */
export function voltagesToExpect(plan: Judgement, scenario?: number): ExpectedVoltages {
  const { network } = plan;
  const alone = plan.model.circuits.filter(({ inNetwork }) => !inNetwork || !network);
  const rows = [
    ...(network ? network.network.parts.flatMap((part) => rowsOf(network, part, scenario)) : []),
    ...alone.map((circuit): ExpectedVoltage => {
      const result = plan.circuits.find((one) => one.circuit.record === circuit.record)?.result;
      return {
        at: circuit.name,
        between: "positive and negative",
        when: `${circuit.systemV} V at its supply`,
        currentA: circuit.loadA,
        expectedV: result?.drop.judged ? result.drop.arrivingV : "not worked out",
        leastV: circuit.minimumV,
      };
    }),
  ];
  return { rows, notes: notesFor(network, alone.length > 0) };
}

export interface ExpectedVoltages {
  readonly rows: readonly ExpectedVoltage[];
  readonly notes: readonly string[];
}

export interface ExpectedVoltage {
  readonly at: string;
  /** The terminals for the meter's two probes. */
  readonly between: string;
  /** The name of the scenario, or the given supply voltage. */
  readonly when: string;
  /** The current that it draws or gives then, A; undefined if it was not calculated. */
  readonly currentA: number | undefined;
  /** V, or why there is none. */
  readonly expectedV: number | string;
  /** The minimum voltage of the device, V. */
  readonly leastV: number | undefined;
}

/** The two terminals of a part for a meter. */
interface Poles {
  readonly positive: number;
  readonly negative: number;
  readonly leastV?: number | undefined;
  /** The current there in a solved scenario, A. */
  current(solved: SolvedScenario): number;
}

function rowsOf(
  { network, result }: JudgedNetwork,
  part: Part,
  asked: number | undefined,
): ExpectedVoltage[] {
  return polesOf(part).map((poles): ExpectedVoltage => {
    const at = withoutArticle(partInWords(part));
    const between = `${terminalOf(network, part, poles.positive)} and ${terminalOf(network, part, poles.negative)}`;
    const row = { at, between, leastV: poles.leastV };
    const lasting = result.scenarios.filter(({ scenario }) => !network.scenarios[scenario]!.momentary);
    const usual = lasting.length > 0 ? lasting : result.scenarios;
    const considered =
      asked === undefined ? usual : result.scenarios.filter(({ scenario }) => scenario === asked);
    const on = considered.filter(({ scenario }) => network.scenarios[scenario]!.on[part.index]);
    const shown = on.find((one) => one.state === "solved");
    const when = network.scenarios[(shown ?? on[0] ?? considered[0])?.scenario ?? 0]!.name;
    if (!shown)
      return { ...row, when, currentA: undefined, expectedV: on.length > 0 ? "not worked out" : "off" };
    if (withoutLengthTo({ network, result }, part).length > 0)
      return { ...row, when, currentA: undefined, expectedV: "not worked out: a length is not known" };
    const volts = shown.terminalV[poles.positive]! - shown.terminalV[poles.negative]!;
    const expectedV = Number.isNaN(volts) ? "no source reaches it" : volts;
    return { ...row, when, currentA: poles.current(shown), expectedV };
  });
}

/** Every part with two poles: those that draw, those that give, and panels, where a builder measures first. */
function polesOf(part: Part): Poles[] {
  const flows = ({ partA }: SolvedScenario) => Math.abs(partA[part.index] ?? 0);
  const takes = ({ inputA }: SolvedScenario) => Math.abs(inputA[part.index] ?? 0);
  if (part.kind === "fusePanel" && part.negativeBus)
    return [{ positive: part.terminals.feed, negative: part.terminals.negative, current: flows }];
  const leastV = minimumVoltageOf(part);
  const ports = portsOf(part);
  return ports.map(({ does, positive, negative }) => ({
    positive,
    negative,
    ...(does === "draws" && leastV !== undefined && { leastV }),
    current: does === "draws" && ports.length > 1 ? takes : flows,
  }));
}

function terminalOf({ terminals }: Network, part: Part, terminal: number): string {
  return withoutArticle(terminalNameInWords(part, terminals[terminal]!.name)).replace(/ terminal$/, "");
}

function withoutArticle(words: string): string {
  return words.replace(/^the /, "");
}

function notesFor(network: JudgedNetwork | undefined, someAlone: boolean): string[] {
  const notes = [
    "Put the fuses in one after the other, and switch each device on by itself first; stop at the first reading that surprises you. Then switch on the devices of the scenario and compare.",
  ];
  if (network) {
    notes.push(
      "Expected: for the plan as written, with the charge and the devices of that scenario. A real bank is seldom at exactly that charge: compare the difference between the bank and the device too.",
    );
    const unsolved = network.result.scenarios.filter(({ state }) => state === "unsolved");
    if (unsolved.length > 0) {
      const names = unsolved.map(({ scenario }) => `"${network.network.scenarios[scenario]?.name ?? ""}"`);
      notes.push(`Not worked out, because there is no operating point: ${names.join(", ")}.`);
    }
  }
  if (someAlone)
    notes.push(
      "A circuit outside of a network has its nominal voltage less its own drop; the drop before it is not included.",
    );
  return notes;
}
