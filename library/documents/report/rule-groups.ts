/** The rules by subject, as the summary counts them. Every folder of rules is in exactly one group; a test ensures this. */
export const ruleGroups: readonly RuleGroup[] = [
  {
    title: "Conductors",
    heldAgainst:
      "what they may carry in their place, the drop allowed, the thinnest size allowed, the heat of a short",
    folders: ["conductor"],
    looksAt: "runs",
  },
  {
    title: "Fuses and breakers",
    heldAgainst:
      "conductor and load, what sources reach, distance, voltage, the greatest and the least short, ratings that are made",
    folders: ["protection"],
    looksAt: "runs",
  },
  {
    title: "Voltage at the devices",
    heldAgainst: "the least voltage that each states, and whether there is a voltage at which all can run",
    folders: ["scenario", "voltage"],
    looksAt: "scenarios",
  },
  {
    title: "Batteries, chargers and inverters",
    heldAgainst: "what each may give and take, and what its supply has to bear",
    folders: ["alternator", "battery", "charger", "inverter"],
    looksAt: "scenarios",
  },
  {
    title: "Solar",
    heldAgainst: "voltage on the coldest day, current in full sun, fuses of strings side by side",
    folders: ["solar"],
    looksAt: "scenarios",
  },
  {
    title: "Bus bars, panels, disconnects and shunts",
    heldAgainst: "the ratings that the plan states, and what each has to be able to cut off or to count",
    folders: ["bus", "disconnect", "panel", "shunt"],
    looksAt: "scenarios",
  },
  {
    title: "How it is joined",
    heldAgainst: "a way out and a way back for every current, no source across itself, one bond to metal",
    folders: ["network"],
    looksAt: "network",
  },
  {
    title: "The plan as a text",
    heldAgainst: "values that can be used, units that make sense, a reason for whatever is accepted",
    folders: ["plan"],
    looksAt: "plan",
  },
];

export interface RuleGroup {
  readonly title: string;
  /** The limits that its rules compare with, in a few words. */
  readonly heldAgainst: string;
  readonly folders: readonly string[];
  readonly looksAt: "runs" | "scenarios" | "network" | "plan";
}

export function isInGroup({ folders }: RuleGroup, rule: string): boolean {
  return folders.includes(rule.split("/")[0] ?? "");
}
