import type { RestFrom } from "../../model/battery-figures.ts";
import type { Network, Part } from "../../model/network.ts";
import { descriptorOf } from "../../model/parts/index.ts";
import type { Phrase } from "../../model/parts/phrase.ts";
import { phraseInWords } from "../../rules/wording/part-in-words.ts";
import { emptyFloodedRestVoltage, lithiumIronPhosphateCell } from "../../standards/rest-voltage.ts";
import type { Assumption } from "./assumption.ts";

const ownPractice = "common practice, no source";

/** Defaults taken for the parts of a network because they are not stated, and the scenarios it was solved with. */
export function assumptionsOfParts(network: Network): readonly Assumption[] {
  return [...network.parts.flatMap(assumptionsOf), ...assumptionsOfScenarios(network)];
}

/** The defaults that its descriptor lists, and the figures that it estimates. */
function assumptionsOf(part: Part): readonly Assumption[] {
  const values = part as unknown as Readonly<Record<string, number | string | boolean>>;
  const { properties, assumed: estimated } = descriptorOf(part);
  const defaults = (part.taken ?? []).flatMap((name): Assumption[] => {
    const { words = name, unit = "", source, assumed } = properties[name]!;
    if (source === undefined && assumed === undefined) return [];
    const amount: Phrase = [{ value: values[name] as number, unit, rounded: true }, assumed?.behind ?? ""];
    return [
      {
        what: sentence(assumed?.words ?? words),
        takenAs: phraseInWords(assumed?.as ?? amount),
        where: part.name,
        source: source ?? ownPractice,
      },
    ];
  });
  return [
    ...defaults,
    ...(estimated?.(part) ?? []).map(({ words, as, source }) => ({
      what: sentence(words),
      takenAs: phraseInWords(as),
      where: part.name,
      source,
    })),
  ];
}

function sentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Voltages at rest are defaults if a scenario states none, or states how full the bank is. */
function assumptionsOfScenarios({ scenarios, parts }: Network): readonly Assumption[] {
  const restingFrom = (basis: RestFrom) => scenarios.filter(({ restFrom }) => restFrom.includes(basis));
  const builtIn = scenarios.filter(({ record }) => record === undefined);
  const names = (of: Network["scenarios"]) => of.map(({ name }) => `"${name}"`).join(", ");
  return [
    {
      what: "Scenarios",
      takenAs: "the usual ones, because the plan names none",
      where: names(builtIn),
      source: ownPractice,
    },
    ...chemistriesOf(parts).map(
      (chemistry): Assumption => ({
        what: `Voltage of the ${chemistry} batteries at rest`,
        takenAs: chemistry === "LiFePO4" ? "3.2 V a cell" : "their nominal voltage, 2 V a cell",
        where: names(restingFrom("usual")),
        source: chemistry === "LiFePO4" ? lithiumIronPhosphateCell.source : ownPractice,
      }),
    ),
    {
      what: "Voltage at rest of batteries with less charge than the published list reaches down to",
      takenAs: "on a straight line to that of an empty battery",
      where: names(restingFrom("charge below the list")),
      source: emptyFloodedRestVoltage.source,
    },
  ];
}

function chemistriesOf(parts: readonly Part[]) {
  return [...new Set(parts.flatMap((part) => (part.kind === "battery" ? [part.chemistry] : [])))];
}
