import { type PermittedFuse, permittedFuses } from "../../analysis/permitted-fuse.ts";
import { repairSizing } from "../../analysis/repair-sizing.ts";
import type { ProposedFix } from "../finding.ts";
import { insertingFixes, runOf } from "../fixes/inserted-protection.ts";
import { type Device, devicesOf, ratingFix, theDevice } from "../fixes/judged-devices.ts";
import { type PlacedDevice, placedDevice, relatedDevice } from "../fixes/placed-device.ts";
import { runFixes } from "../fixes/sized-fix.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found, inNetwork, type JudgedNetwork, type JudgedPlan, perRun } from "../rule.ts";
import { exceeds, formatDistinctWithUnit } from "../wording/format-number.ts";
import { atPart, partInWords, relatedPart } from "../wording/part-in-words.ts";
import { wayOut } from "../wording/way-out.ts";

const makersLimit = ownRequirement(
  "The maker of a device states the largest fuse that protects its inside and its own leads.",
);

export const permittedFuse = defineRule<Values>({
  id: "protection/permitted-fuse",
  title: "Fuse above the largest that its device permits",
  severity: "warning",
  why: "A fault inside a device draws less than a fuse that is too great for it opens at, and the device burns behind a fuse that is right for its conductor.",
  sources: [makersLimit],
  fixable: true,
  acceptable: true,
  // Needs the fuse or breaker nearest to each device that states the largest one, as the plan states both.
  check: (plan) => [...ofLoneCircuits(plan), ...inNetwork(plan, (judged) => ofParts(plan, judged))],
  message({ device, maxFuseA, of, wayOut: way }) {
    const [, most] = formatDistinctWithUnit(device.ratingA, maxFuseA, "A");
    return `${theDevice(device)} is above ${most}, the largest that the maker of ${of} permits: ${way}.`;
  },
});

interface Values {
  readonly device: Device;
  readonly maxFuseA: number;
  /** "the inverter kettle", "its load". */
  readonly of: string;
  readonly wayOut: string;
}

const noRatingUpToIt = "no rating up to that carries its load; ask the maker which fuse is right";

function ofLoneCircuits(plan: JudgedPlan): Found<Values>[] {
  return perRun(plan, (run) => {
    const { circuit } = run;
    const { maxFuseA } = circuit;
    const [judged] = devicesOf(run);
    if (maxFuseA === undefined || circuit.inNetwork || !judged) return [];
    if (!exceeds(judged.device.ratingA, maxFuseA)) return [];
    const fixes = runFixes(plan, circuit, "protection/permitted-fuse");
    const { device, at } = judged;
    return [
      { at, values: { device, maxFuseA, of: "its load", wayOut: wayOut(fixes, noRatingUpToIt) }, fixes },
    ];
  });
}

function ofParts(plan: JudgedPlan, judged: JudgedNetwork): Found<Values>[] {
  return permittedFuses(judged.network).flatMap((permitted): Found<Values>[] => {
    const { part, maxFuseA, own } = permitted;
    const placed = own ? placedDevice(judged.network, own.index) : leastBefore(judged, permitted);
    if (!placed || !exceeds(placed.device.ratingA, maxFuseA)) return [];
    const fixes = own ? ownFixes(plan, placed) : ofItsOwn(plan, judged, permitted, placed);
    return [
      {
        ...(own
          ? { subject: placed.subject, at: placed.at, related: [relatedPart(part)] }
          : { subject: part.name, at: atPart(part, "maxFuseA"), related: [relatedDevice(placed)] }),
        values: {
          device: placed.device,
          maxFuseA,
          of: partInWords(part),
          wayOut: wayOut(fixes, noRatingUpToIt),
        },
        fixes,
      },
    ];
  });
}

/** The least device on the way from the source to a device that has none of its own. */
function leastBefore({ network, result }: JudgedNetwork, { part }: PermittedFuse): PlacedDevice | undefined {
  const terminal = "positive" in part.terminals ? part.terminals.positive : undefined;
  const way = terminal === undefined ? undefined : result.topology.wayFromSource(terminal);
  const on = new Set(way?.conductors);
  const ends = new Set(
    [...on].flatMap((index) => [network.conductors[index]!.from, network.conductors[index]!.to]),
  );
  return network.devices
    .filter(({ place }) =>
      place.at === "conductor"
        ? on.has(place.conductor)
        : Object.values<number>(network.parts[place.part]!.terminals).every((one) => ends.has(one)),
    )
    .sort((one, other) => one.ratingA - other.ratingA)
    .flatMap(({ index }) => placedDevice(network, index) ?? [])[0];
}

/** The rating that the run or part should have. */
function ownFixes(plan: JudgedPlan, placed: PlacedDevice): ProposedFix[] {
  if (placed.conductor)
    return runFixes(plan, runOf(plan, placed.conductor.run).circuit, "protection/permitted-fuse");
  const ratingA = repairSizing(plan).ratingOf(placed.protection);
  return ratingA === undefined || ratingA >= placed.device.ratingA ? [] : [ratingFix(placed, ratingA)];
}

/** A device of its own, where others share the one before it. */
function ofItsOwn(
  plan: JudgedPlan,
  judged: JudgedNetwork,
  { part, conductor }: PermittedFuse,
  before: PlacedDevice,
): ProposedFix[] {
  const { terminals, conductors } = judged.network;
  const end = terminals[conductors[conductor]!.from]!.part === part.index ? "far" : "near";
  return insertingFixes(
    plan,
    judged,
    { conductor, ends: [end] },
    { behindAnother: true, belowA: before.device.ratingA },
  );
}
