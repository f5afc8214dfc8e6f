import { type JudgedPlan, withKnownCurrent } from "../../rules/rule.ts";
import { listInWords } from "../../rules/wording/part-in-words.ts";
import type { NumberedFinding } from "./chapter.ts";
import { numbersOf } from "./numbered-findings.ts";

/**
 * The items of this plan that could not be judged at all, a sentence each. It comes before everything else: a reader who stops
 * here must not take silence for a good result.
 */
export function notJudged(plan: JudgedPlan, numbered: readonly NumberedFinding[]): readonly string[] {
  return [
    ...unreadNetwork(plan, numbered),
    ...withoutCircuits(plan, numbered),
    ...unsolvedScenarios(plan, numbered),
    ...withoutCurrent(plan),
    ...unreadCircuits(plan, numbered),
    ...withoutAmpacity(plan),
    ...withoutEnergy(plan),
  ];
}

function unreadNetwork({ model }: JudgedPlan, numbered: readonly NumberedFinding[]): readonly string[] {
  if (!model.networkUnread) return [];
  return [
    `The network was not judged as a whole: a value of it is invalid${numbersOf(numbered, "plan/invalid-value")}, so its currents, voltages and faults are unknown. Size, fuse and ampacity of its circuits and cables are judged by the stated load and by single devices${soundInWords(model)}; its parts are not judged.`,
  ];
}

function withoutCircuits({ model }: JudgedPlan, numbered: readonly NumberedFinding[]): readonly string[] {
  const names = model.withoutCircuits.map(({ name }) => name);
  if (names.length === 0) return [];
  const those = names.length === 1 ? "this circuit" : "these circuits";
  return [
    `The network was judged without ${listInWords(names, names.length)}${numbersOf(numbered, "plan/invalid-value")}: with ${those}, currents and voltage drops in shared conductors are greater than the report states.`,
  ];
}

function soundInWords({ remains }: JudgedPlan["model"]): string {
  const names = remains?.sound?.parts.map(({ name }) => name) ?? [];
  return names.length === 0
    ? ""
    : `, and ${listInWords(names, names.length)}, connected with none of it, in full`;
}

function unsolvedScenarios(
  { network: judged }: JudgedPlan,
  numbered: readonly NumberedFinding[],
): readonly string[] {
  if (!judged) return [];
  const { network, result } = judged;
  return result.scenarios.flatMap((one) => {
    if (one.state === "solved") return [];
    const name = `"${network.scenarios[one.scenario]?.name ?? ""}"`;
    if (one.why === "not-converged")
      return [`Scenario ${name} could not be solved; its currents and voltages are not judged.`];
    const culprits = one.culprits.flatMap((part) => network.parts[part]?.name ?? []);
    const at = culprits.length > 0 ? `, first at ${listInWords(culprits, 3)}` : "";
    return [
      `In scenario ${name} there is no voltage at which everything could run${at}${numbersOf(numbered, "voltage/collapse")}; its currents and voltages are not judged.`,
    ];
  });
}

/** Runs of the network with an unknown maximum current: they are not among the circuits of the judgement. */
function withoutCurrent({ network: judged, circuits }: JudgedPlan): readonly string[] {
  if (!judged) return [];
  const told = new Set(withKnownCurrent(circuits).map(({ circuit }) => circuit.record));
  const names = new Map(
    judged.network.conductors.flatMap(({ record, name }) => (told.has(record) ? [] : [[record, name]])),
  );
  if (names.size === 0) return [];
  const which = listInWords([...names.values()], names.size);
  return [
    `No current could be worked out in ${which}: heat, drop and protection of ${names.size === 1 ? "it" : "them"} were judged only by the stated load and by single devices.`,
  ];
}

function unreadCircuits(
  { model, circuits }: JudgedPlan,
  numbered: readonly NumberedFinding[],
): readonly string[] {
  const numbers = numbersOf(numbered, "plan/invalid-value");
  const partly = circuits.filter(({ circuit }) => circuit.partlyInvalid).map(({ circuit }) => circuit.name);
  const unread = model.unjudged.map(({ name }) => name);
  return [
    ...(unread.length > 0
      ? [
          `Not judged at all, because a value of ${unread.length === 1 ? "it" : "them"} is invalid${numbers}: ${listInWords(unread, unread.length)}.`,
        ]
      : []),
    ...(partly.length > 0
      ? [`Judged without a value that is invalid${numbers}: ${listInWords(partly, partly.length)}.`]
      : []),
  ];
}

function withoutAmpacity({ circuits }: JudgedPlan): readonly string[] {
  const names = (why: "place-too-hot" | "no-table") =>
    circuits.flatMap(({ circuit, result: { ampacity } }) =>
      !ampacity.judged && ampacity.why === why ? [circuit.name] : [],
    );
  const [tooHot, noTable] = [names("place-too-hot"), names("no-table")];
  return [
    ...(tooHot.length > 0
      ? [
          `Ampacity was not judged, because the place is too hot for its insulation: ${listInWords(tooHot, tooHot.length)}.`,
        ]
      : []),
    ...(noTable.length > 0
      ? [`Ampacity was not judged, because no table covers it: ${listInWords(noTable, noTable.length)}.`]
      : []),
  ];
}

/** Periods whose balance could not be worked out, and banks whose loads state no hours. */
function withoutEnergy({ model, energy }: JudgedPlan): readonly string[] {
  const names = (periods: readonly { readonly name: string }[]) =>
    listInWords(
      periods.map(({ name }) => `"${name}"`),
      periods.length,
    );
  if (energy.length === 0)
    return model.periods.length === 0
      ? []
      : [`The energy of ${names(model.periods)} was not judged, because the network was not read.`];
  const unclear = energy.filter(({ climate }) => !climate).map(({ period }) => period);
  const silent = energy
    .filter(({ banks }) => banks.some(({ months }) => months.some(({ verdict }) => verdict === "not judged")))
    .map(({ period }) => period);
  return [
    ...(unclear.length > 0
      ? [`The energy of ${names(unclear)} was not judged, because its place is not clear.`]
      : []),
    ...(silent.length > 0
      ? [
          `Whether the bank keeps up in ${names(silent)} was not judged: no load of a bank states how long it runs.`,
        ]
      : []),
  ];
}
