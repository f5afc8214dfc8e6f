import { isProtectedAtOtherEnd, selfLimitingSourceAt } from "../../analysis/network/faults/fed-at-device.ts";
import type { UnprotectedPath } from "../../analysis/network/topology/network-topology.ts";
import { repairSizing } from "../../analysis/repair-sizing.ts";
import type { ConductorEnd, NetworkConductor } from "../../model/network.ts";
import type { Run } from "../../model/run.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import { protectionAtEachSource } from "../../standards/protection-rules.ts";
import type { ProposedFix, Related } from "../finding.ts";
import { insertingFixes, runOf } from "../fixes/inserted-protection.ts";
import {
  addingFixes,
  type Device,
  devicesOf,
  type JudgedDevice,
  statedWithUnit,
  whyNoRating,
} from "../fixes/judged-devices.ts";
import { placedDevice, propertyOf, relatedDevice } from "../fixes/placed-device.ts";
import {
  atProperty,
  defineRule,
  type Found,
  inNetwork,
  type JudgedNetwork,
  type JudgedPlan,
  perRun,
} from "../rule.ts";
import { atEnd, conductorInWords, partInWords, relatedPart } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";
import { wayOut } from "../wording/way-out.ts";

export const bothEnds = defineRule<Values>({
  id: "protection/both-ends",
  title: "Fed from both ends, protected at one",
  severity: "error",
  why: "When the fuse at one end blows, the source at the other end goes on feeding the short.",
  sources: [protectionAtEachSource],
  fixable: true,
  // A lesser device elsewhere may protect the end too.
  repairsWait: "for devices",
  acceptable: true,
  // Needs the range of ratings, and in a network the paths of the topology. A circuit without any protection is left to
  // protection/missing or protection/unprotected-path, for both ends.
  check: (plan) => [
    ...perRun(plan, (judged) => {
      const { circuit, result } = judged;
      // Only a circuit outside a network states it; in one the topology decides.
      if (!circuit.fedFromBothEnds || circuit.protectionFarEnd) return [];
      const [near] = devicesOf(judged);
      if (!near) return [];
      const fixes = fixesFor(plan, near, circuit);
      const values: Values = {
        device: near.device,
        word: "circuit",
        source: sourceInWords(protectionAtEachSource),
        wayOut: wayOut(fixes, whyNoRating(circuit, result, near.protection)),
      };
      return [{ at: atProperty(circuit, "fedFromBothEnds"), values, fixes }];
    }),
    ...inNetwork(plan, (judged) =>
      judged.result.topology.unprotected
        .filter((path) => isProtectedAtOtherEnd(judged.network, path))
        .map((path) => foundInNetwork(plan, judged, path)),
    ),
  ],
  message: ({ device, word, limited, source, wayOut: way }) =>
    limited
      ? `The ${statedWithUnit(device.ratingA, "A")} ${device.kind} ${endInWords(device, word)} is at ${limited}, which limits its own current, and not at the other source, which does not (${source}): ${way}.`
      : `Current can come from both ends, but only the ${statedWithUnit(device.ratingA, "A")} ${device.kind} ${endInWords(device, word)} is given; each source needs its own (${source}): ${way}.`,
});

interface Values {
  /** The existing one. */
  readonly device: Device;
  readonly word: "circuit" | "cable";
  /** The source at the existing device, if it limits itself to what the conductor may carry: "the charger". */
  readonly limited?: string;
  readonly source: string;
  readonly wayOut: string;
}

function endInWords({ end }: Device, word: Values["word"]): string {
  return end === "protect" ? `where the ${word} starts` : "at the far end";
}

/** The one device at the other end instead, for a source that limits itself and needs none. */
function moving(adding: readonly ProposedFix[], record: number, from: ConductorEnd): ProposedFix[] {
  const old = propertyOf[from];
  return adding.flatMap(({ title, kind, changes }): ProposedFix[] => {
    const [, device] = /(?:^A|and a)dd (.+)$/.exec(title) ?? [];
    const others = changes.filter((change) => change.record !== record || change.path[0] !== old);
    if (!device || others.length !== 1) return [];
    return [
      { title: `Use ${device} instead`, kind, changes: [{ do: "remove", record, path: [old] }, ...others] },
    ];
  });
}

function foundInNetwork(plan: JudgedPlan, judged: JudgedNetwork, path: UnprotectedPath): Found<Values> {
  const { network } = judged;
  const conductor = network.conductors[path.conductor] as NetworkConductor;
  const run = runOf(plan, conductor.run);
  const [there] = devicesOf(run);
  if (!there) throw new Error("A conductor that is protected at its other end has a device there.");
  const device = conductor.near ?? conductor.far;
  const { ampacity } = run.result;
  const limited =
    device && ampacity.judged ? selfLimitingSourceAt(network, device, ampacity.ampacityA) : undefined;
  const adding = insertingFixes(plan, judged, path, { there });
  const lead = bareLeadOf(judged, path);
  const fixes =
    limited && device
      ? [...moving(adding, conductor.record, device.place.end), ...adding]
      : adding.map((fix): ProposedFix => (lead ? { ...fix, kind: "suggestion" } : fix));
  const first = lead && `first put a fuse into ${conductorInWords(lead)}, at its source`;
  const values: Values = {
    device: there.device,
    word: conductor.run.word,
    ...(limited && { limited: partInWords(limited) }),
    source: sourceInWords(protectionAtEachSource),
    wayOut: first ?? wayOut(fixes, whyNoRating(run.circuit, run.result, there.protection)),
  };
  const sources = path.sources.flatMap((index): Related[] => {
    const part = network.parts[index];
    return part ? [relatedPart(part, `${partInWords(part)} reaches it where it has no device`)] : [];
  });
  const placed = device && placedDevice(network, device.index);
  return {
    subject: conductor.name,
    at: atEnd(conductor, there.device.end === "protect" ? "to" : "from"),
    values,
    related: [...sources, ...(placed ? [relatedDevice(placed)] : [])],
    fixes,
  };
}

/**
 * The conductor at the only source that reaches the end without a device, if it lacks a device of its own: one there may also protect
 * the conductors behind it.
 */
function bareLeadOf(
  judged: JudgedNetwork,
  { sourceCount, way: [lead] }: UnprotectedPath,
): NetworkConductor | undefined {
  if (sourceCount !== 1 || lead === undefined || !bareConductors(judged).has(lead)) return undefined;
  return judged.network.conductors[lead];
}

/** The conductors that lack a device and have none at either end. */
const bareConductors = workedOutOnce(({ network, result }: JudgedNetwork): ReadonlySet<number> => {
  const lacking = result.topology.unprotected.map(({ conductor }) => conductor);
  return new Set(
    lacking.filter((index) => {
      const { near, far } = network.conductors[index]!;
      return !near && !far;
    }),
  );
});

/** The same device again if it is in order; else that of the run as it should be. */
function fixesFor(plan: JudgedPlan, { protection }: JudgedDevice, circuit: Run): ProposedFix[] {
  return addingFixes(circuit, repairSizing(plan).ofRun(circuit), {
    ends: ["protectFarEnd"],
    like: protection,
  });
}
