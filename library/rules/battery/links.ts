import { type BankLinks, bankLinksOf, type Link } from "../../analysis/bank-links.ts";
import { thinnestSufficient } from "../../analysis/sizing.ts";
import { metresPerInch } from "../../model/length-limits.ts";
import type { Network } from "../../model/network.ts";
import { protectionDistances, ratingBetweenLoadAndConductor } from "../../standards/protection-rules.ts";
import { runOf } from "../fixes/inserted-protection.ts";
import { matchingFixes, placedDevice } from "../fixes/placed-device.ts";
import { sizedFixes, sizeInWords, whyNoSize } from "../fixes/sized-fix.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found, inNetwork, type JudgedPlan } from "../rule.ts";
import { exceeds, formatDistinctWithUnit, formatRounded } from "../wording/format-number.ts";
import { atConductor, atPart, listInWords, partInWords, relatedPart } from "../wording/part-in-words.ts";
import { sizePath } from "../wording/property-paths.ts";
import { ampacitySourceInWords, sourceInWords } from "../wording/source-in-words.ts";
import { noSizeIsEnough, wayOut } from "../wording/way-out.ts";

const ownFuse = ownRequirement("Each of several lithium batteries in parallel has a fuse of its own.");

export const bankLinks = defineRule<Values>({
  id: "battery/links",
  title: "Links and fuses inside a bank",
  severity: "warning",
  why: "Links between batteries lie before the fuse of the bank: it protects them only if they carry the current that it lets through.",
  sources: [ratingBetweenLoadAndConductor, protectionDistances.fromBattery.source, ownFuse],
  fixable: true,
  acceptable: true,
  // Needs the links of each bank, the greatest fuse next to it, and the ampacity of each link. An error if a link is too thin.
  check: (plan) =>
    inNetwork(plan, ({ network, result }) =>
      bankLinksOf(network, result.topology.banks).flatMap((bank) => [
        ...bank.links.flatMap((link) => [...tooThin(plan, network, link, bank), ...tooLong(link)]),
        ...withoutFuses(bank),
        ...joinedMiddles(bank),
      ]),
    ),
  message(values) {
    switch (values.what) {
      case "ampacity": {
        const [may, fuse] = formatDistinctWithUnit(values.ampacityA, values.fuseA, "A");
        return `${values.size} may carry ${may} (${values.source}), and the bank's fuse of ${fuse} lets more through this link for hours: ${values.wayOut}.`;
      }
      case "length":
        return `This link between batteries has no fuse, and is longer than ${formatRounded(values.maxIn)} in (${values.source}): bring the batteries closer, or put a fuse in.`;
      case "middles":
        return `Connects the middles of two strings of lithium batteries, with no fuse in it: a fault in one string is fed past the fuses of both, and their protections no longer cut off together (${values.source}). Take it out.`;
      case "fuses":
        return `${values.count} lithium batteries in parallel, and ${listInWords(values.without)} have no fuse of their own: the others feed a fault in one of them with all their current (${values.source}). Give each battery a fuse at its terminal.`;
    }
  },
});

type Values =
  | {
      readonly what: "ampacity";
      readonly size: string;
      readonly ampacityA: number;
      readonly fuseA: number;
      readonly source: string;
      readonly wayOut: string;
    }
  | { readonly what: "length"; readonly maxIn: number; readonly source: string }
  | { readonly what: "middles"; readonly source: string }
  | {
      readonly what: "fuses";
      readonly count: number;
      /** The batteries without one. */
      readonly without: readonly string[];
      readonly source: string;
    };

function tooThin(
  plan: JudgedPlan,
  network: Network,
  { conductor, ampacity }: Link,
  { fuse }: BankLinks,
): Found<Values>[] {
  // A link with a fuse of its own is protected by that.
  if (fuse === undefined || !ampacity.judged || conductor.near || conductor.far) return [];
  const fuseA = fuse.ratingA;
  if (!exceeds(fuseA, ampacity.ampacityA)) return [];
  const { run } = conductor;
  const asFused = { ...run, loadA: fuseA, continuous: false };
  const placed = placedDevice(network, fuse.index);
  // A fuse that becomes lesser anyway needs no thicker link.
  const matching = placed ? matchingFixes(plan, runOf(plan, run).circuit, placed, "battery/links") : [];
  const fixes = matching.length > 0 ? matching : sizedFixes(run, thinnestSufficient(asFused));
  return [
    {
      subject: conductor.name,
      at: atConductor(conductor, ...sizePath(run)),
      severity: "error",
      fixes,
      values: {
        what: "ampacity",
        size: sizeInWords(run.conductor),
        ampacityA: ampacity.ampacityA,
        fuseA,
        source: ampacitySourceInWords(ampacity),
        wayOut: wayOut(fixes, whyNoSize(asFused, noSizeIsEnough)),
      },
    },
  ];
}

function tooLong({ conductor }: Link): Found<Values>[] {
  const { maxIn, source } = protectionDistances.fromBattery;
  const { near, far, lengthM } = conductor;
  if (near || far || lengthM === undefined || !exceeds(lengthM / metresPerInch, maxIn)) return [];
  const [property = "lengthM"] = Object.keys(conductor.run.lengthsGiven);
  const values: Values = { what: "length", maxIn, source: sourceInWords(source) };
  return [{ subject: conductor.name, at: atConductor(conductor, property), values }];
}

function joinedMiddles({ middles, strings }: BankLinks): Found<Values>[] {
  if (strings.some(({ top }) => top.chemistry !== "LiFePO4")) return [];
  const values: Values = { what: "middles", source: sourceInWords(ownFuse) };
  return middles.map((link) => ({ subject: link.name, at: atConductor(link), values }));
}

function withoutFuses({ strings }: BankLinks): Found<Values>[] {
  const isLithium = strings.every(({ top }) => top.chemistry === "LiFePO4");
  const without = strings.filter(({ hasOwnFuse }) => !hasOwnFuse).map(({ top }) => top);
  const [first, second] = without;
  // With a fuse in all but one, nothing feeds any of them past a fuse.
  if (!isLithium || !first || !second) return [];
  const values: Values = {
    what: "fuses",
    count: strings.length,
    without: without.map(({ name }) => name),
    source: sourceInWords(ownFuse),
  };
  const related = without.slice(1, mostRelated).map((battery) => relatedPart(battery, partInWords(battery)));
  return [{ subject: first.name, at: atPart(first), values, related }];
}

const mostRelated = 8;
