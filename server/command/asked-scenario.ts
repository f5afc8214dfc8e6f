import type { Judgement } from "../../library/judge.ts";

/** The index of the scenario that a name refers to, or the reason why there is none. No name means no particular scenario. */
export function askedScenario(
  { network, model }: Judgement,
  name: string | undefined,
): { readonly scenario: number | undefined } | { readonly why: string } {
  if (name === undefined) return { scenario: undefined };
  if (!network) {
    const why = model.networkUnread ? "its network cannot be read" : "it has no network";
    return { why: `there is no scenario "${name}": ${why}` };
  }
  const { scenarios } = network.network;
  const scenario = scenarios.findIndex((one) => one.name === name);
  if (scenario >= 0) return { scenario };
  return {
    why: `there is no scenario "${name}", only ${scenarios.map((one) => `"${one.name}"`).join(", ")}`,
  };
}
