import { interruptsA } from "../../analysis/choose-device.ts";
import { gatesFor } from "../../analysis/opening-time.ts";
import type { Part } from "../../model/network.ts";
import type { Protection } from "../../model/run.ts";
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
  "fuses, contacts, lugs and switches have no resistance here, and a short is taken at rest, without the inductance of the cable;",
  "parallel devices whose combined rating exceeds a conductor's ampacity: each is checked on its own;",
  "parallel wires once one of them has come loose: the rest then carry the whole current behind one fuse;",
  "whether two devices in series work together in a short that is too much for the smaller one;",
  "energy over a day and a year, and whether the battery is large enough;",
  "physical layout, and whether the stated lengths are correct;",
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
  const without = (wanted: (protection: Protection, wired: boolean) => boolean) =>
    devices
      .filter(({ protection, wired }) => wanted(protection, wired))
      .map(({ protection, words }) => `${words} (${formatExact(protection.ratingA)} A)`);
  const parts = network?.network.parts ?? [];
  const partsWithout = (figure: UnstatedFigure) =>
    parts.filter((part) => unstatedIn(part).includes(figure)).map(({ name }) => name);
  const lone = runs.filter(({ inNetwork }) => !inNetwork);
  return [
    {
      name: "Distance of a fuse or breaker from its source of power",
      names: without(({ distanceM }) => distanceM === undefined),
    },
    {
      name: "Interrupting rating of a fuse or breaker: neither stated nor known for its family",
      names: without((protection) => interruptsA(protection) === undefined),
    },
    {
      name: "Opening time of a fuse or breaker: its family is not stated, or no times are known for it",
      names: without((protection) => gatesFor(protection) === undefined),
    },
    {
      name: "Current of a dead short, and drop before the circuit begins: it is in no network",
      names: lone.map(({ name }) => name),
    },
    {
      name: "Rating of a bus bar or fuse panel",
      names: partsWithout("ratedA"),
    },
    {
      name: "Rating of a single branch of a fuse panel",
      names: partsWithout("branchRatedA"),
    },
    {
      name: "Number of studs of a bus bar",
      names: partsWithout("studs"),
    },
    {
      name: "Discharge limit of a battery",
      names: partsWithout("maxDischargeA"),
    },
    {
      name: "Charge limit of a battery, except the usual one of its chemistry",
      names: partsWithout("maxChargeA"),
    },
    {
      name: "Minimum voltage of a device",
      names: [
        ...partsWithout("minimumV"),
        ...lone.filter(({ minimumV }) => minimumV === undefined).map(({ name }) => name),
      ],
    },
    {
      name: "Voltage of a solar array on the coldest day: the lowest temperature is not stated",
      names: partsWithout("lowestC"),
    },
  ].flatMap(({ name, names }) => (names.length === 0 ? [] : [{ name, value: names.join("; ") }]));
}

type UnstatedFigure =
  | "ratedA"
  | "branchRatedA"
  | "studs"
  | "maxDischargeA"
  | "maxChargeA"
  | "minimumV"
  | "lowestC";

/** The figures that a rule asks of a part and that the plan does not state. */
function unstatedIn(part: Part): readonly UnstatedFigure[] {
  const unstated = <Figure extends UnstatedFigure>(
    figures: { readonly [F in Figure]?: number | undefined },
    ...names: Figure[]
  ) => names.filter((name) => figures[name] === undefined);
  switch (part.kind) {
    case "battery":
      return unstated(part, "maxDischargeA", "maxChargeA");
    case "busBar":
      return unstated(part, "ratedA", "studs");
    case "fusePanel":
      return unstated(part, "ratedA", "branchRatedA");
    case "load":
      return unstated(part, "minimumV");
    case "solarArray":
      return unstated(part, "lowestC");
    case "alternator":
    case "shoreCharger":
    case "solarController":
    case "dcDcCharger":
    case "inverter":
    case "disconnect":
    case "shunt":
    case "chassis":
    case "part":
      return [];
  }
}
