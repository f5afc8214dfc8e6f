import { unknownSharesOf } from "../../analysis/network/unknown-shares.ts";
import { dropVerdict } from "../../analysis/voltage-drop.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import { ownRequirement } from "../own-requirement.ts";
import { atProperty, defineRule, type JudgedNetwork, type JudgedPlan, perRun } from "../rule.ts";
import { listInWords } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

const stated = ownRequirement(
  "Voltage drop and least short-circuit current need the length of every conductor.",
);

export const noLength = defineRule<Values>({
  id: "conductor/no-length",
  title: "Length of a conductor not known",
  severity: "info",
  why: "Without its length, it is not known how much voltage a conductor loses, nor whether a fuse opens for a short at its end.",
  sources: [stated],
  // Only the builder can measure it.
  fixable: false,
  acceptable: true,
  // Needs the supply paths, the least faults, the currents that divide by an unknown length, and the energy of each bank.
  check: (plan) =>
    perRun(plan, ({ circuit }) => {
      if (circuit.lengthsFrom !== "unknown") return [];
      const { devices, shares, least } = notJudged(plan, circuit.record);
      const balance = plan.energy.some(({ banks }) =>
        banks.some(({ withoutLength }) => withoutLength.some(({ record }) => record === circuit.record)),
      );
      const places = isNotPlaced(plan, circuit.record);
      const source = sourceInWords(stated);
      const values: Values = { word: circuit.word, devices, shares, least, balance, places, source };
      return [{ at: atProperty(circuit), values }];
    }),
  message({ word, devices, shares, least, balance, places }) {
    const others = word === "circuit" ? devices - 1 : devices;
    const behind =
      others > 0
        ? [`that of ${others} ${word === "circuit" ? "other " : ""}${others === 1 ? "device" : "devices"}`]
        : [];
    const figures = ["its drop", ...behind, ...(least ? ["the least short-circuit current"] : [])];
    const sharing = shares ? "; of the ways beside it, each counts as if it carried everything" : "";
    const energy = balance ? ', and the verdicts on its periods are "at best", without its loss' : "";
    const state = word === "cable" ? "lengthFt or lengthM" : "oneWayFt or oneWayM";
    return `No length is stated, so ${listInWords(figures)} ${figures.length > 1 ? "are" : "is"} not judged${sharing}${energy}: state ${state}${places ? ", or the place (at) of the parts at its ends" : ""}.`;
  },
});

interface Values {
  readonly word: "circuit" | "cable";
  /** Devices whose drop on the whole supply path is not judged for want of this length. */
  readonly devices: number;
  /** Its current, or that of conductors beside it, divides by this length. */
  readonly shares: boolean;
  /** The least short-circuit current in it is not judged. */
  readonly least: boolean;
  /** Its loss is missing in the energy of a period. */
  readonly balance: boolean;
  /** The plan has boards, and a part at an end of it has no place. */
  readonly places: boolean;
  readonly source: string;
}

function isNotPlaced({ placement }: JudgedPlan, record: number): boolean {
  return (
    placement?.layout.leads.some(
      (lead) => lead.record === record && placement.ways[lead.index]!.state === "not placed",
    ) ?? false
  );
}

function notJudged({ network }: JudgedPlan, record: number): Pick<Values, "devices" | "shares" | "least"> {
  const found = network && byRecord(network).get(record);
  return found ?? { devices: 0, shares: false, least: true };
}

const byRecord = workedOutOnce((judged: JudgedNetwork) => {
  const { network, result } = judged;
  const { decidedBy } = unknownSharesOf(network);
  const found = new Map<number, Pick<Values, "devices" | "shares" | "least">>();
  const sharing = new Set(
    network.scenarios.flatMap((scenario) =>
      network.conductors.flatMap((_, conductor) =>
        decidedBy(scenario, conductor).filter((other) => other !== conductor),
      ),
    ),
  );
  const paths = result.supplyPaths.filter((way) => dropVerdict(way) === "not judged");
  network.conductors.forEach(({ record, lengthM }, index) => {
    if (lengthM !== undefined) return;
    const before = found.get(record) ?? { devices: 0, shares: false, least: false };
    const own = paths.filter(({ withoutLength }) => withoutLength.includes(index));
    found.set(record, {
      devices: Math.max(before.devices, new Set(own.map(({ part }) => part)).size),
      shares: before.shares || sharing.has(index),
      least: before.least || result.faults.conductors[index]?.leastIsAtMost === true,
    });
  });
  return found;
});
