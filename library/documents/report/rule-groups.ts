/** The rules by subject, as the summary counts them. Every folder of rules is in exactly one group; a test ensures this. */
export const ruleGroups: readonly RuleGroup[] = [
  {
    title: "Conductors",
    heldAgainst: "ampacity in their place, allowed drop, minimum size, the heat of a short",
    folders: ["conductor"],
    looksAt: "runs",
  },
  {
    title: "Fuses and breakers",
    heldAgainst:
      "conductor and load, paths from sources, distance, voltage, maximum and minimum fault, standard ratings",
    folders: ["protection"],
    looksAt: "runs and devices",
  },
  {
    title: "Voltage at the devices",
    heldAgainst: "the minimum voltage that each states, and whether there is a voltage at which all can run",
    folders: ["scenario", "voltage"],
    looksAt: "scenarios",
  },
  {
    title: "Batteries, chargers and inverters",
    heldAgainst: "the current that each may give and take, and that its supply must carry",
    folders: ["alternator", "battery", "charger", "inverter"],
    looksAt: "scenarios",
  },
  {
    title: "Energy over a period",
    heldAgainst: "use, sun, driving and shore power by the hour, and the charge that is to stay in the bank",
    folders: ["energy"],
    looksAt: "scenarios",
  },
  {
    title: "Solar",
    heldAgainst: "voltage on the coldest day, current in full sun, fuses of parallel strings",
    folders: ["solar"],
    looksAt: "scenarios",
  },
  {
    title: "Bus bars, panels, disconnects, shunts and other parts",
    heldAgainst:
      "the ratings that the plan states, loads that must be cut off, and current that must be counted",
    folders: ["bus", "disconnect", "panel", "part", "shunt"],
    looksAt: "scenarios",
  },
  {
    title: "Places and ways",
    heldAgainst:
      "room, air and reach of parts, ways and lengths of conductors, channels, supports, ventilation",
    folders: ["placement"],
    looksAt: "layout",
  },
  {
    title: "Connections",
    heldAgainst: "a supply and a return for every current, no short-circuited source, one bond to metal",
    folders: ["network"],
    looksAt: "network",
  },
  {
    title: "The plan as a text",
    heldAgainst: "valid values, plausible units, a reason for each accepted finding",
    folders: ["plan"],
    looksAt: "plan",
  },
];

export interface RuleGroup {
  readonly title: string;
  /** The limits that its rules compare with, in a few words. */
  readonly heldAgainst: string;
  readonly folders: readonly string[];
  /** `runs and devices`: the runs with their devices, and the devices that are parts of their own. */
  readonly looksAt: "runs" | "runs and devices" | "scenarios" | "network" | "layout" | "plan";
}

export function isInGroup({ folders }: RuleGroup, rule: string): boolean {
  return folders.includes(rule.split("/")[0] ?? "");
}
