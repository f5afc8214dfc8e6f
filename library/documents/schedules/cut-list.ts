import { crossSectionMm2 } from "../../analysis/copper-area.ts";
import type { BenchSettings, Spool } from "../../model/bench-settings.ts";
import { metresPerFoot } from "../../model/length-limits.ts";
import type { LengthUnit } from "../../model/length-unit.ts";
import type { Conductor } from "../../model/run.ts";
import type { DuplexCable } from "../../plan/duplex.ts";
import { sizeInWords } from "../../rules/fixes/sized-fix.ts";
import { formatRounded } from "../../rules/wording/format-number.ts";
import { lengthInUnit } from "../../rules/wording/lengths.ts";
import { usualSpoolLengths } from "../../standards/spool-lengths.ts";
import type { Table } from "../table.ts";
import { forPrograms, numbers, quantity, tableOf, words } from "../table-of.ts";
import { counted, lengthToCut, notKeptNotes, numberText } from "./cells.ts";
import { feetAndInches, soldLength } from "./lengths.ts";
import { type Nesting, nestPieces, type Offer } from "./nest-pieces.ts";
import { amount, priceTitle, sumInWords } from "./prices.ts";
import type { NumberedWire } from "./wire-numbers.ts";
import { inMetres, insulationInWords, slackRule, unitOf } from "./wire-schedule.ts";

/** The length of wire needed of each kind, and its pieces. */
export function cutList(wires: readonly NumberedWire[], bench: BenchSettings): Table {
  const kinds = kindsOfWire(wires, bench);
  const unit = unitOf(wires);
  return tableOf<KindOfWire>(
    {
      id: "cut-list",
      title: "Cut list",
      notes: [slackRule(bench, unit), ...duplexNotes(wires), ...notKeptNotes(wires), ...leftOutNotes(wires)],
    },
    [
      ...kindColumns,
      numbers("pieces", "Pieces", ({ pieces }) => counted(pieces.length)),
      inMetres(
        unit,
        numbers("lengthM", "Together, m", ({ pieces }) => lengthToCut(lengthOf(pieces))),
      ),
      ...(unit === "ft"
        ? [
            numbers<KindOfWire>("lengthFtIn", "Together, ft and in", ({ pieces }) =>
              feetAndInches(lengthOf(pieces)),
            ),
          ]
        : []),
      inMetres(
        unit,
        numbers("longestM", "Longest, m", ({ pieces }) => lengthToCut(longestOf(pieces))),
      ),
      ...(unit === "ft"
        ? [
            numbers<KindOfWire>("longestFtIn", "Longest, ft and in", ({ pieces }) =>
              feetAndInches(longestOf(pieces)),
            ),
          ]
        : []),
      words("wires", "Wires", ({ pieces }) => listed(pieces.map(({ number }) => number))),
    ],
    kinds,
  );
}

/** The spools to buy, the pieces to cut from each, and the remainder. */
export function spoolList(wires: readonly NumberedWire[], bench: BenchSettings): Table {
  const kinds = kindsOfWire(wires, bench);
  const unit = unitOf(wires);
  const rows = kinds.flatMap((kind): SpoolRow[] => [
    ...kind.nesting.spools.map((spool) => ({ kind, ...spool })),
    ...(kind.byLength ? [{ kind, offer: undefined, pieces: kind.pieces }] : []),
    ...(kind.nesting.tooLong.length > 0 ? [{ kind, offer: undefined, pieces: kind.nesting.tooLong }] : []),
  ]);
  const prices = rows.map(({ offer }) => offer?.price);
  return tableOf<SpoolRow>(
    { id: "spools", title: "Spools to buy", notes: spoolNotes(kinds, prices, bench, wires) },
    [
      words("size", "Size", ({ kind }) => kindInWords(kind)),
      words("colour", "Colour", ({ kind }) => kind.colour),
      words("insulation", "Insulation", ({ kind }) => kind.insulation),
      words("spool", "Spool", ({ kind, offer, pieces }) =>
        kind.byLength && !offer
          ? boughtByLength(lengthOf(pieces), unit)
          : offer
            ? soldLength(offer.lengthM, unit)
            : `longer than every spool: by the ${unit === "ft" ? "foot" : "metre"}`,
      ),
      forPrograms(numbers("spoolM", "Spool, m", ({ offer }) => (offer ? quantity(offer.lengthM) : null))),
      words("cuts", "Cut from it", ({ pieces }) =>
        pieces.map(({ number, lengthM }) => `${number}: ${pieceInWords(lengthM, unit)}`).join(", "),
      ),
      inMetres(
        unit,
        numbers("usedM", "Used, m", ({ pieces }) => lengthToCut(lengthOf(pieces))),
      ),
      inMetres(
        unit,
        numbers("leftM", "Left over, m", ({ offer, pieces }) =>
          offer ? quantity(leftOn(offer, pieces)) : null,
        ),
      ),
      ...(unit === "ft"
        ? [
            numbers<SpoolRow>("usedFtIn", "Used, ft and in", ({ pieces }) => feetAndInches(lengthOf(pieces))),
            numbers<SpoolRow>("leftFtIn", "Left over, ft and in", ({ offer, pieces }) =>
              offer ? feetAndInches(leftOn(offer, pieces)) : null,
            ),
          ]
        : []),
      numbers("leftPercent", "Left over, %", ({ offer, pieces }) =>
        offer ? quantity((100 * leftOn(offer, pieces)) / offer.lengthM) : null,
      ),
      ...(prices.some((price) => price !== undefined)
        ? [
            numbers<SpoolRow>("price", priceTitle("Price", bench.currency), ({ offer }) =>
              offer?.price === undefined ? null : { value: offer.price, text: amount(offer.price) },
            ),
          ]
        : []),
    ],
    rows,
  );
}

/** Wire or cable of one kind: one spool has one size, one colour, one insulation. */
interface KindOfWire {
  /** Of one wire: parallel ones are separate pieces. Of a two-conductor cable: of each of its conductors. */
  readonly size: Conductor;
  readonly duplex: DuplexCable | undefined;
  readonly colour: string;
  readonly insulation: string;
  readonly pieces: readonly Piece[];
  readonly nesting: Nesting<Piece>;
  /** The builder states the available spools of this size. */
  readonly spoolsStated: boolean;
  /** Bought by the foot or metre: no pieces to nest. */
  readonly byLength: boolean;
}

interface Piece {
  readonly number: string;
  readonly lengthM: number;
}

type SpoolRow = {
  readonly kind: KindOfWire;
  readonly offer: Offer | undefined;
  readonly pieces: readonly Piece[];
};

const kindColumns = [
  words<KindOfWire>("size", "Size", kindInWords),
  words<KindOfWire>("colour", "Colour", ({ colour }) => colour),
  words<KindOfWire>("insulation", "Insulation", ({ insulation }) => insulation),
];

/** AWG before metric, thinnest first, then by colour. */
function kindsOfWire(
  numbered: readonly NumberedWire[],
  { spools, wireByLength }: BenchSettings,
): KindOfWire[] {
  const kinds = new Map<
    string,
    Omit<KindOfWire, "nesting" | "pieces" | "spoolsStated" | "byLength"> & { pieces: Piece[] }
  >();
  for (const cut of cutTogether(numbered)) {
    const { wire } = cut[0]!;
    const { duplex, cutLengthM } = wire;
    if (cutLengthM === undefined) continue;
    const size: Conductor = { ...wire.size, parallel: 1 };
    const colour = cut.map((one) => one.wire.colour || "not stated").join("/");
    const insulation = insulationInWords(wire);
    const key = JSON.stringify([size, duplex, colour, insulation]);
    const kind = kinds.get(key) ?? { size, duplex, colour, insulation, pieces: [] };
    kinds.set(key, kind);
    for (let piece = 0; piece < wire.size.parallel; piece++)
      kind.pieces.push({ number: cut.map(numberText).join(" + "), lengthM: cutLengthM });
  }
  return [...kinds.values()]
    .sort(
      (one, other) =>
        one.size.system.localeCompare(other.size.system, "en") ||
        crossSectionMm2(one.size) - crossSectionMm2(other.size) ||
        compareText(one.duplex ?? "", other.duplex ?? "") ||
        compareText(one.colour, other.colour) ||
        compareText(one.insulation, other.insulation),
    )
    .map((kind) => {
      const stated = spools.filter((spool) => isOfKind(spool, kind));
      const offers = stated.length > 0 ? stated : usualSpools(unitOf(numbered));
      const byLength = wireByLength && stated.length === 0;
      const nesting = byLength ? { spools: [], tooLong: [] } : nestPieces(kind.pieces, offers);
      return { ...kind, nesting, spoolsStated: stated.length > 0, byLength };
    });
}

/** The wires of each piece: one, or the two conductors of a two-conductor cable. */
function cutTogether(numbered: readonly NumberedWire[]): readonly (readonly NumberedWire[])[] {
  const pairs = new Map<number, NumberedWire[]>();
  const cuts: NumberedWire[][] = [];
  for (const one of numbered) {
    const { record, duplex } = one.wire;
    const begun = duplex === undefined ? undefined : pairs.get(record);
    if (begun) begun.push(one);
    else cuts.push([one]);
    if (duplex !== undefined && !begun) pairs.set(record, cuts.at(-1)!);
  }
  return cuts;
}

function duplexNotes(wires: readonly NumberedWire[]): string[] {
  if (wires.every(({ wire }) => wire.duplex === undefined)) return [];
  return ["A two-conductor cable is one piece for two wires: 4 + 5."];
}

/** "14 AWG"; of a two-conductor cable "2 × 14 AWG, flat duplex". */
function kindInWords({ size, duplex }: Pick<KindOfWire, "size" | "duplex">): string {
  return duplex === undefined ? sizeInWords(size) : `2 × ${sizeInWords(size)}, ${duplex}`;
}

function isOfKind(
  { size, duplex, colour }: Spool,
  kind: Pick<KindOfWire, "size" | "duplex" | "colour">,
): boolean {
  if (duplex !== kind.duplex) return false;
  const sameSize =
    "awg" in size
      ? kind.size.system === "awg" && size.awg === kind.size.awg
      : kind.size.system === "metric" && size.mm2 === kind.size.mm2;
  return sameSize && (colour === undefined || colour.toLowerCase() === kind.colour.toLowerCase());
}

function usualSpools(unit: LengthUnit): Offer[] {
  const { soldFt, soldM } = usualSpoolLengths;
  if (unit === "m") return soldM.map((lengthM) => ({ lengthM }));
  return soldFt.map((lengthFt) => ({ lengthM: lengthFt * metresPerFoot }));
}

function spoolNotes(
  kinds: readonly KindOfWire[],
  prices: readonly (number | undefined)[],
  { currency }: BenchSettings,
  wires: readonly NumberedWire[],
): string[] {
  const { soldFt, soldM } = usualSpoolLengths;
  const unit = unitOf(wires);
  const notes = ["Every piece is cut from one spool, without a joint."];
  const guessed = kinds.filter(({ spoolsStated, byLength }) => !spoolsStated && !byLength);
  if (guessed.length > 0) {
    const lengths = unit === "ft" ? `${soldFt.join(", ")} ft` : `${soldM.join(", ")} m`;
    notes.push(
      `If the build states no spools of a size, usual lengths are taken: ${lengths}; common practice, no source.`,
    );
  }
  if (kinds.some(({ byLength }) => !byLength))
    notes.push(
      "Chosen for the least price if every spool of a kind has one, else for the least wire bought, then for the fewest spools. A better cut may exist.",
    );
  const boughtM = sum(kinds.flatMap(({ nesting }) => nesting.spools.map(({ offer }) => offer.lengthM)));
  const usedM = sum(kinds.flatMap(({ nesting }) => nesting.spools.map(({ pieces }) => lengthOf(pieces))));
  const count = sum(kinds.map(({ nesting }) => nesting.spools.length));
  if (boughtM > 0)
    notes.push(
      `${count} ${count === 1 ? "spool" : "spools"}, ${lengthInUnit(boughtM, unit)} in all; left over ${lengthInUnit(boughtM - usedM, unit)}, ${formatRounded((100 * (boughtM - usedM)) / boughtM)} %.`,
    );
  if (prices.some((price) => price !== undefined)) notes.push(sumInWords(prices, currency));
  return [...notes, ...notKeptNotes(wires), ...leftOutNotes(wires)];
}

/** A list that leaves wires out must not look whole. */
function leftOutNotes(wires: readonly NumberedWire[]): string[] {
  const leftOut = wires.filter(({ wire }) => wire.cutLengthM === undefined);
  if (leftOut.length === 0) return [];
  const named = leftOut.map((one) => `${numberText(one)} (${one.wire.name})`).join(", ");
  return [
    `Not included, because the length is not known: ${leftOut.length === 1 ? "wire" : "wires"} ${named}.`,
  ];
}

function pieceInWords(lengthM: number, unit: LengthUnit): string {
  return unit === "ft" ? feetAndInches(lengthM) : `${lengthToCut(lengthM).text} m`;
}

/** Up to the next whole foot or metre: "23 ft, by the foot". */
function boughtByLength(lengthM: number, unit: LengthUnit): string {
  const whole = (length: number) => Math.ceil(length - 1e-6).toLocaleString("en-US");
  return unit === "ft"
    ? `${whole(lengthM / metresPerFoot)} ft, by the foot`
    : `${whole(lengthM)} m, by the metre`;
}

/** Never negative through rounding of sums. */
function leftOn({ lengthM }: Offer, pieces: readonly Piece[]): number {
  const leftM = lengthM - lengthOf(pieces);
  return leftM < 1e-6 ? 0 : leftM;
}

/** "1, 2, 3 (2 pieces)": a number shared by several pieces appears once. */
function listed(all: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const one of all) counts.set(one, (counts.get(one) ?? 0) + 1);
  return [...counts].map(([one, times]) => (times > 1 ? `${one} (${times} pieces)` : one)).join(", ");
}

function lengthOf(pieces: readonly Piece[]): number {
  return sum(pieces.map(({ lengthM }) => lengthM));
}

function longestOf(pieces: readonly Piece[]): number {
  return pieces.reduce((longest, { lengthM }) => Math.max(longest, lengthM), 0);
}

function sum(all: readonly number[]): number {
  return all.reduce((total, one) => total + one, 0);
}

/** By code point: every machine sorts alike. */
function compareText(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}
