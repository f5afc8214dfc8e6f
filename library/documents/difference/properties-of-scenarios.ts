import type { Network, Scenario } from "../../model/network.ts";
import { listInWords, terminalNameInWords } from "../../rules/wording/part-in-words.ts";
import type { Property } from "./property.ts";
import { quantity, text } from "./property.ts";

/**
 * The settings of a scenario, and the parts that it switches on and off, in comparable form. A new device in the plan changes no
 * scenario: only parts that both plans have are compared.
 */
export function scenarioProperties(scenario: Scenario, { parts }: Network): Property[] {
  const having = (id: string, words: string, has: (part: number) => boolean): Property => ({
    ...{ id, words },
    value: { as: "parts", parts: parts.flatMap(({ index }) => (has(index) ? [index] : [])) },
  });
  const voltages = new Map<number, number[]>();
  for (const { index } of parts) {
    const restV = scenario.restV[index];
    if (restV !== undefined) voltages.set(restV, [...(voltages.get(restV) ?? []), index]);
  }
  return [
    having("off", "off", (part) => scenario.on[part] === false),
    having("starting", "starting", (part) => scenario.starting[part] === true),
    ...selectedInputs(scenario, parts),
    quantity("sunPercent", "sun", scenario.sunShare * 100, "%"),
    ...restVoltages([...voltages.keys()]),
  ];
}

function selectedInputs({ selected }: Scenario, parts: Network["parts"]): Property[] {
  return [...(selected ?? [])].map(([index, inputs]) => {
    const part = parts[index]!;
    return text(
      `selected ${part.name}`,
      `inputs of ${part.name}`,
      listInWords(inputs.map((input) => terminalNameInWords(part, input))),
    );
  });
}

/** Batteries at rest: one voltage, or several if the bank is not of one kind. */
function restVoltages(restV: readonly number[]): Property[] {
  const [first, ...others] = [...restV].sort((one, other) => one - other);
  if (first === undefined) return [];
  if (others.length === 0) return [quantity("restV", "batteries at rest", first, "V")];
  return [
    quantity("restV", "batteries at rest, lowest", first, "V"),
    quantity("highestRestV", "batteries at rest, highest", others.at(-1)!, "V"),
  ];
}
