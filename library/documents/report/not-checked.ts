import { greatestVoltage } from "../../analysis/charging-voltages.ts";
import { interruptsA } from "../../analysis/choose-device.ts";
import { gatesFor } from "../../analysis/opening-time.ts";
import { conductorWith, type Network, type Part } from "../../model/network.ts";
import { isDevice } from "../../model/part-roles.ts";
import { descriptorOf, descriptorOfWord, partWords } from "../../model/parts/index.ts";
import { maximumOfDevice, minimumOfDevice } from "../../model/parts/silences.ts";
import type { Protection, Run } from "../../model/run.ts";
import type { JudgedPlan } from "../../rules/rule.ts";
import { formatExact } from "../../rules/wording/format-number.ts";
import type { Chapter, ReportContext, Section } from "./chapter.ts";
import { everyRun } from "./every-run.ts";

/** Checks that a reader must not assume: those missing in any plan, and in this one because it states too little. */
export function notCheckedChapter({ judgement }: ReportContext): Chapter {
  const silent = silences(judgement);
  const sections: readonly Section[] = [
    {
      id: "not-stated",
      title: "Not judged, because the plan states no value",
      blocks:
        silent.length === 0
          ? [{ kind: "paragraph", text: "The plan states every value that its rules require." }]
          : [{ kind: "facts", facts: silent }],
    },
    {
      id: "never-checked",
      title: "Not checked in any plan",
      blocks: [
        { kind: "paragraph", text: whatIsChecked.join(" ") },
        { kind: "list", items: notCheckedToday },
        {
          kind: "paragraph",
          text: "Each rule's page lists its own omissions: loomwright explain, with the name of the rule, shows it.",
        },
      ],
    },
  ];
  return { id: "not-checked", title: "What was not checked", orientation: "portrait", blocks: [], sections };
}

/** In the words of the README; a test keeps the two equal. */
export const whatIsChecked = [
  "Each run is checked as written, and each network in the scenarios of the plan: currents, voltages, protection, and the current of a dead short.",
  "The currents of unconnected runs are not added up: circuits without from are judged alone.",
] as const;

/** The same: sentences of the list, as the README has them. */
export const notCheckedToday = [
  "lugs have no resistance here, nor have contacts, switches, fuses and breakers without a figure for it; a short is taken at rest, without the inductance of the cable;",
  "whether two devices in series work together in a short that is too much for the smaller one;",
  "energy in a plan without a period; with one, a horizon, snow, and how single years differ from the mean;",
  "whether a device whose plan states no voltage for it is made for that of its network;",
  "whether parts fit and stated lengths are correct, in a plan without the places of its parts; with them, supports of parts, covers and hinges, and anything in front of a surface;",
  "circuits above 50 V, alternating current, and aluminium conductors.",
] as const;

interface Silence {
  readonly name: string;
  readonly value: string;
}

/** The rules that stay silent because the plan omits a value, and the circuits and parts concerned. */
function silences(plan: JudgedPlan): readonly Silence[] {
  const { network } = plan;
  const runs = everyRun(plan);
  const devices = runs.flatMap((circuit) => {
    const at = (protection: Protection | null, end: string) =>
      protection ? [{ protection, words: `${circuit.name}${end}`, wired: circuit.inNetwork }] : [];
    return [...at(circuit.protection, ""), ...at(circuit.protectionFarEnd, ", far end")];
  });
  const ownParts = (network?.network.parts ?? [])
    .filter(isDevice)
    .map((part) => ({ protection: part, words: part.name, wired: true }));
  const without = (
    wanted: (protection: Protection, wired: boolean) => boolean,
    of = [...devices, ...ownParts],
  ) =>
    of
      .filter(({ protection, wired }) => wanted(protection, wired))
      .map(({ protection, words }) => `${words} (${formatExact(protection.ratingA)} A)`);
  const lone = runs.filter(({ inNetwork }) => !inNetwork);
  return [
    {
      name: "Distance of a fuse or breaker from its source of power",
      // The distance of a part of its own is the length of its cable.
      names: without(({ distanceM }) => distanceM === undefined, devices),
    },
    {
      name: "Interrupting rating of a fuse or breaker: neither stated nor known for its family",
      names: without((protection) => interruptsA(protection) === undefined),
    },
    {
      name: "Interrupting rating of a fuse or breaker at the voltage of its circuit: it is stated for less (interruptingAtV)",
      names: network ? ratedForLessVoltage(network.network) : [],
    },
    {
      name: "Opening time of a fuse or breaker: its family is not stated, or no times are known for it",
      names: without((protection) => gatesFor(protection) === undefined),
    },
    {
      name: "Current of a dead short, and drop before the circuit begins: it is in no network",
      names: lone.map(({ name }) => name),
    },
    ...silencesOfParts(network?.network.parts ?? [], lone),
  ].flatMap(({ name, names }) => (names.length === 0 ? [] : [{ name, value: names.join("; ") }]));
}

function ratedForLessVoltage(network: Network): string[] {
  return network.devices.flatMap((device) => {
    const { place, ratingA } = device;
    const unknown = interruptsA(device, greatestVoltage(network, device)) === undefined;
    if (!unknown || interruptsA(device) === undefined) return [];
    const run = conductorWith(network, device)?.run;
    const name = place.at === "part" ? network.parts[place.part]!.name : (run?.name ?? "");
    const end = place.at === "conductor" && place.end === "far" ? ", far end" : "";
    return [`${name}${end} (${formatExact(ratingA)} A)`];
  });
}

/** The judgements left out because a part, or a circuit outside of the network, does not state a figure. */
function silencesOfParts(parts: readonly Part[], lone: readonly Run[]) {
  const silences = partWords.flatMap((word) =>
    Object.values(descriptorOfWord(word).properties).flatMap(({ silentWithout }) => silentWithout ?? []),
  );
  return [...new Set(silences)].map((name) => ({
    name,
    names: [
      ...parts.filter((part) => isSilent(part, name)).map((part) => part.name),
      ...lone.filter((run) => isSilentRun(run, name)).map((run) => run.name),
    ],
  }));
}

function isSilentRun({ minimumV, maximumV }: Run, about: string): boolean {
  if (about === minimumOfDevice) return minimumV === undefined;
  return about === maximumOfDevice && maximumV === undefined;
}

function isSilent(part: Part, about: string): boolean {
  return Object.entries(descriptorOf(part).properties).some(
    ([name, { silentWithout }]) => silentWithout === about && !(name in part),
  );
}
