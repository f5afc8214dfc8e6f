import { crossSectionMm2 } from "../../analysis/copper-area.ts";
import { supportsNeeded } from "../../analysis/placement/supports-needed.ts";
import type { Judgement } from "../../judge.ts";
import type { BoardUnit } from "../../model/length-unit.ts";
import { isDevice } from "../../model/part-roles.ts";
import { descriptorOf } from "../../model/parts/index.ts";
import type { Protection } from "../../model/run.ts";
import { boardUnitOf } from "../../model/unit-of-plan.ts";
import { deviceKind, sizeInWords } from "../../rules/fixes/sized-fix.ts";
import { formatExact, formatRounded } from "../../rules/wording/format-number.ts";
import { shortLengthInUnit } from "../../rules/wording/lengths.ts";
import { detailsInWords, kindInWords } from "../../rules/wording/part-in-words.ts";
import { sourceInWords, unconfirmed } from "../../rules/wording/source-in-words.ts";
import { supports } from "../../standards/conductor-ways.ts";
import { deviceFamilies } from "../../standards/device-ratings.ts";
import { terminalStuds } from "../../standards/terminal-studs.ts";
import type { Table } from "../table.ts";
import { numbers, tableOf, words } from "../table-of.ts";
import { counted } from "./cells.ts";
import { type Device, type Devices, demandsInWords, hasProtection } from "./devices.ts";
import { fittingToBuy, isUsual, usualFittingsNote } from "./fittings.ts";
import { amount, priceTitle, sumInWords } from "./prices.ts";
import type { NumberedWire } from "./wire-numbers.ts";

/**
 * Purchases besides wire: parts, fuses with their spares, fittings; and the devices that the circuits feed.
 *
 * @param unit In which distances along conductors are written. Left out: that of the boards.
 */
export function partsList(
  plan: Judgement,
  devices: Devices,
  wires: readonly NumberedWire[],
  unit = boardUnitOf(plan.placement?.layout),
): Table {
  const { currency, spareFuses } = plan.model.build.bench;
  const rows = merged([
    ...partItems(plan),
    ...deviceItems(plan, devices, spareFuses),
    ...holderItems(devices),
    ...fittingItems(wires),
    ...supportItems(plan, unit),
    ...loadItems(plan),
  ]);
  const prices = rows.map(({ price, quantity }) => price && price * quantity);
  const priced = rows.some(({ price }) => price !== undefined);
  return tableOf<Item>(
    {
      id: "parts-list",
      title: "Parts list",
      notes: [
        `Wire is in the list of spools. Not in it: the fittings at both sides of a fuse holder, sleeves, ${plan.placement ? "" : "clips, "}screws, boxes.`,
        ...(rows.some(({ spares }) => spares > 0)
          ? [
              spareFuses === undefined
                ? `Spares: ${usualSparesInWords} (common practice, no source), unless the build states a number.`
                : `With ${spareFuses} spare ${spareFuses === 1 ? "fuse" : "fuses"} of each kind.`,
            ]
          : []),
        ...(rows.some(({ details }) => details.endsWith(usualInWords)) ? [usualFittingsNote] : []),
        ...(rows.some(({ details }) => details.includes(unconfirmed))
          ? [`Holes of ring terminals: ${terminalStuds.source.note ?? ""} ${unconfirmed}.`]
          : []),
        ...(priced ? [sumInWords(prices, currency)] : []),
      ],
    },
    [
      words("group", "Group", ({ group }) => group),
      words("item", "Item", ({ item }) => item),
      words("details", "Details", ({ details }) => details || null),
      words("standard", "Standard", ({ standard }) => standard || null),
      numbers("quantity", "Quantity", ({ quantity }) => counted(quantity)),
      numbers("spares", "Of these spare", ({ spares }) => (spares > 0 ? counted(spares) : null)),
      words("usedAs", "For", ({ usedAs }) => usedAs.join("; ") || null),
      words("source", "Figures from", ({ source }) => source ?? null),
      ...(priced
        ? [
            numbers<Item>("priceEach", priceTitle("Each", currency), ({ price }) =>
              price === undefined ? null : { value: price, text: amount(price) },
            ),
            numbers<Item>("price", priceTitle("Price", currency), ({ price, quantity }) =>
              price === undefined ? null : { value: price * quantity, text: amount(price * quantity) },
            ),
          ]
        : []),
    ],
    rows,
  );
}

interface Item {
  readonly group: "parts" | "protection" | "fittings" | "devices";
  readonly item: string;
  readonly details: string;
  readonly standard?: string;
  readonly quantity: number;
  readonly spares: number;
  /** Names of the items they are for. */
  readonly usedAs: readonly string[];
  readonly source?: string | undefined;
  readonly price?: number | undefined;
}

/** Items that are equal in everything that matters when buying share one line. */
function merged(items: readonly Item[]): Item[] {
  const lines = new Map<string, Item>();
  for (const one of items) {
    const key = kindOf(one);
    const known = lines.get(key);
    lines.set(key, {
      ...one,
      quantity: (known?.quantity ?? 0) + one.quantity,
      spares: (known?.spares ?? 0) + one.spares,
      usedAs: [...new Set([...(known?.usedAs ?? []), ...one.usedAs])],
    });
  }
  return [...lines.values()];
}

function kindOf({ group, item, details, standard, source, price }: Item): string {
  return JSON.stringify([group, item, details, standard, source, price]);
}

/**
 * A breaker that is a part of its own is among the devices. The metal of the vehicle, hull or building is no purchase: it is listed
 * only for the price or the source of its figures, if the plan states one.
 */
function partItems({ network }: Judgement): Item[] {
  return (network?.network.parts ?? [])
    .filter((part) => part.kind !== "load" && !(isDevice(part) && part.family === "circuit breaker"))
    .filter(
      (part) => descriptorOf(part).role !== "metal" || part.price !== undefined || part.source !== undefined,
    )
    .map((part) => ({
      group: "parts",
      item: part.kind === "part" ? part.name : kindInWords(part),
      ...(part.kind === "fuseHolder" ? holderFor(part) : { details: detailsInWords(part).join(", ") }),
      quantity: 1,
      spares: 0,
      usedAs: [part.name],
      source: part.source,
      price: part.price,
    }));
}

/** The number of spares if the build states none: common practice, no source. */
export const usualSparesInWords = "2 of each blade fuse, none of larger ones";

/**
 * A fuse without a stated family counts as a blade up to the largest rating of the medium blade (ISO 8820-3, Type C).
 */
function usualSpares({ family, ratingA }: Protection): number {
  const isBlade =
    family === undefined
      ? ratingA <= Math.max(...deviceFamilies["ISO 8820-3 Type C"].ratingsA)
      : family !== "circuit breaker" && deviceFamilies[family].form.startsWith("blade");
  return isBlade ? 2 : 0;
}

function deviceItems(
  plan: Judgement,
  { panels, elsewhere }: Devices,
  spareFuses: number | undefined,
): Item[] {
  const used: UsedDevice[] = [];
  for (const { panel, positions } of panels)
    for (const { position, taken } of positions)
      if (taken && hasProtection(taken))
        used.push({ ...boughtAs(taken), where: `${panel.name} ${position}` });
  for (const device of elsewhere) {
    const { part, place, wires } = device;
    const name = part?.name ?? wires[0]!.wire.name;
    used.push({ ...boughtAs(device), where: place === name ? name : `${name}, ${place}` });
  }
  for (const part of plan.network?.network.parts ?? [])
    if (part.kind === "solarArray" && part.stringFuseA !== undefined)
      for (let string = 1; string <= part.parallel; string++)
        used.push({
          protection: { ratingA: part.stringFuseA, writtenAs: "number" },
          where: `${part.name}, string ${string}`,
        });
  const families = Object.keys(deviceFamilies);
  const inOrder = used.sort(
    ({ protection: one }, { protection: other }) =>
      families.indexOf(one.family ?? "") - families.indexOf(other.family ?? "") ||
      one.ratingA - other.ratingA,
  );
  const sparesOf = new Map<string, number>();
  for (const device of inOrder)
    sparesOf.set(kindOf(deviceItem(device)), spareFuses ?? usualSpares(device.protection));
  return merged(inOrder.map(deviceItem)).map((item) => {
    const spares = item.item === "breaker" ? 0 : sparesOf.get(kindOf(item))!;
    return { ...item, quantity: item.quantity + spares, spares };
  });
}

interface UsedDevice {
  readonly protection: Protection;
  readonly where: string;
  readonly source?: string | undefined;
}

/** The price and the source of a fuse holder are its own; its fuse is bought by rating and family. */
function boughtAs({ protection, part }: Device): Pick<UsedDevice, "protection" | "source"> {
  if (part?.kind !== "fuseHolder") return { protection, source: part?.source };
  const { price: _, ...fuse } = protection;
  return { protection: fuse };
}

function deviceItem({ protection, where, source }: UsedDevice): Item {
  const { family, ratingA, price } = protection;
  const form = family && family !== "circuit breaker" ? deviceFamilies[family].form : "";
  return {
    group: "protection",
    item: deviceKind(protection),
    details: [`${formatRounded(ratingA)} A`, form, demandsInWords(protection)].filter(Boolean).join(", "),
    standard: family === undefined ? "not stated" : family === "circuit breaker" ? "" : family,
    quantity: 1,
    spares: 0,
    usedAs: [where],
    source,
    price,
  };
}

/**
 * A fuse in a panel or in a holder of the plan has its place there; any other needs a holder for it and for the wire that it
 * protects. A breaker needs none.
 */
function holderItems({ elsewhere }: Devices): Item[] {
  return elsewhere
    .filter(({ part, protection }) => !part && deviceKind(protection) === "fuse")
    .flatMap(({ protection, wires }) =>
      wires.map(({ wire }): Item => {
        const { details, standard } = holderFor(protection);
        return {
          ...{ group: "protection", item: "fuse holder", quantity: 1, spares: 0, usedAs: [wire.name] },
          ...{ details: `${details} and ${sizeInWords(wire.size)}`, standard },
        };
      }),
    );
}

function holderFor({ ratingA, family }: Pick<Protection, "ratingA" | "family">) {
  return { details: `for ${formatRounded(ratingA)} A`, standard: family ?? "not stated" };
}

/** Thinnest wire first; each parallel wire has its own. */
function fittingItems(wires: readonly NumberedWire[]): Item[] {
  const bySize = [...wires].sort(
    ({ wire: { size: one } }, { wire: { size: other } }) =>
      Number(one.system === "metric") - Number(other.system === "metric") ||
      crossSectionMm2(one) - crossSectionMm2(other),
  );
  return bySize.flatMap(({ wire }) =>
    [wire.from, wire.to].map((end): Item => {
      const size = sizeInWords({ ...wire.size, parallel: 1 });
      const hole = holeOf(end.termination);
      return {
        group: "fittings",
        item: fittingToBuy(end) ?? "fitting, not stated",
        details: [
          `for ${size}`,
          hole !== undefined && `hole ${formatExact(hole)} mm (${unconfirmed})`,
          isUsual(end) && usualInWords,
        ]
          .filter(Boolean)
          .join(", "),
        quantity: wire.size.parallel,
        spares: 0,
        usedAs: [],
      };
    }),
  );
}

/** Clips and ties for bundles and for stretches in the open, by the greatest distance that they may have. */
function supportItems({ placement }: Judgement, unit: BoardUnit): Item[] {
  if (!placement) return [];
  const { channels, leads } = placement.layout;
  return supportsNeeded(placement).map(({ channel, lead, everyMm, statedMm, toDisconnect, needed }): Item => {
    const { source } = toDisconnect ? supports.toDisconnect : supports;
    const isCloser = statedMm !== undefined && statedMm < everyMm;
    return {
      ...{ group: "fittings", item: "support", quantity: needed, spares: 0 },
      details: isCloser
        ? `for conductors, every ${formatExact(statedMm)} mm as stated`
        : `for conductors, at least every ${shortLengthInUnit(everyMm, unit)} (${sourceInWords(source)})`,
      usedAs: [(channels[channel ?? -1] ?? leads[lead]!).name],
    };
  });
}

function holeOf(termination: string | undefined): number | undefined {
  const holes: Readonly<Record<string, number>> = terminalStuds.holeMm;
  return termination !== undefined && Object.hasOwn(holes, termination) ? holes[termination] : undefined;
}

const usualInWords = "usual, not stated";

/** A circuit that was judged alone states its own load. */
function loadItems({ network, model }: Judgement): Item[] {
  const inNetwork = (network?.network.parts ?? [])
    .filter((part) => part.kind === "load")
    .map((part): Item => {
      const { name, source, price } = part;
      return { ...device, item: name, details: detailsInWords(part).join(", "), source, price };
    });
  const alone = model.circuits
    .filter(({ inNetwork, statesLoad }) => statesLoad && !(inNetwork && network))
    .map(({ name, loadW, loadA }): Item => {
      const details = loadW === undefined ? `${formatExact(loadA)} A` : `${formatExact(loadW)} W`;
      return { ...device, item: name, details };
    });
  return [...inNetwork, ...alone];
}

const device = { group: "devices", quantity: 1, spares: 0, usedAs: [] } as const;
