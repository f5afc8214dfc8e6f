import { crossSectionMm2 } from "../../analysis/copper-area.ts";
import type { BenchSettings, Spool } from "../../model/bench-settings.ts";
import type { Conductor } from "../../model/run.ts";
import { sizeInWords } from "../../rules/fixes/sized-fix.ts";
import { formatExact, formatRounded } from "../../rules/wording/format-number.ts";
import { metresPerFoot } from "../../rules/wording/property-paths.ts";
import { usualSpoolLengths } from "../../standards/spool-lengths.ts";
import type { Table } from "../table.ts";
import { numbers, quantity, tableOf, words } from "../table-of.ts";
import { counted, lengthToCut, notKeptNotes, numberText } from "./cells.ts";
import { feetAndInches } from "./lengths.ts";
import { type Nesting, nestPieces, type Offer } from "./nest-pieces.ts";
import { amount, priceTitle, sumInWords } from "./prices.ts";
import type { NumberedWire } from "./wire-numbers.ts";
import { insulationInWords, slackRule } from "./wire-schedule.ts";

/** The length of wire needed of each kind, and its pieces. */
export function cutList(wires: readonly NumberedWire[], bench: BenchSettings): Table {
  const kinds = kindsOfWire(wires, bench);
  const inFeet = kinds.some(({ size }) => size.system === "awg");
  return tableOf<KindOfWire>(
    {
      id: "cut-list",
      title: "Cut list",
      notes: [slackRule(bench), ...notKeptNotes(wires)],
    },
    [
      ...kindColumns,
      numbers("pieces", "Pieces", ({ pieces }) => counted(pieces.length)),
      numbers("lengthM", "Together, m", ({ pieces }) => lengthToCut(lengthOf(pieces))),
      ...(inFeet
        ? [
            numbers<KindOfWire>("lengthFtIn", "Together, ft and in", ({ size, pieces }) =>
              size.system === "awg" ? feetAndInches(lengthOf(pieces)) : null,
            ),
          ]
        : []),
      numbers("longestM", "Longest, m", ({ pieces }) =>
        lengthToCut(pieces.reduce((longest, { lengthM }) => Math.max(longest, lengthM), 0)),
      ),
      words("wires", "Wires", ({ pieces }) => listed(pieces.map(({ number }) => number))),
    ],
    kinds,
  );
}

/** The spools to buy, the pieces to cut from each, and the remainder. */
export function spoolList(wires: readonly NumberedWire[], bench: BenchSettings): Table {
  const kinds = kindsOfWire(wires, bench);
  const rows = kinds.flatMap((kind): SpoolRow[] => [
    ...kind.nesting.spools.map((spool) => ({ kind, ...spool })),
    ...(kind.nesting.tooLong.length > 0 ? [{ kind, offer: undefined, pieces: kind.nesting.tooLong }] : []),
  ]);
  const prices = rows.map(({ offer }) => offer?.price);
  return tableOf<SpoolRow>(
    { id: "spools", title: "Spools to buy", notes: spoolNotes(kinds, prices, bench, wires) },
    [
      words("size", "Size", ({ kind }) => sizeInWords(kind.size)),
      words("colour", "Colour", ({ kind }) => kind.colour),
      words("insulation", "Insulation", ({ kind }) => kind.insulation),
      words("spool", "Spool", ({ kind, offer }) =>
        offer ? spoolInWords(offer, kind.size) : "longer than every spool: by the metre",
      ),
      numbers("spoolM", "Spool, m", ({ offer }) => (offer ? quantity(offer.lengthM) : null)),
      words("cuts", "Cut from it", ({ kind, pieces }) =>
        pieces.map(({ number, lengthM }) => `${number}: ${pieceInWords(lengthM, kind.size)}`).join(", "),
      ),
      numbers("usedM", "Used, m", ({ pieces }) => lengthToCut(lengthOf(pieces))),
      numbers("leftM", "Left over, m", ({ offer, pieces }) =>
        offer ? quantity(leftOn(offer, pieces)) : null,
      ),
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

/** Wire of one kind: wire from one spool has one size, one colour, one insulation. */
interface KindOfWire {
  /** Of one wire: parallel ones are separate pieces. */
  readonly size: Conductor;
  readonly colour: string;
  readonly insulation: string;
  readonly pieces: readonly Piece[];
  readonly nesting: Nesting<Piece>;
  /** The builder states the available spools of this size. */
  readonly spoolsStated: boolean;
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
  words<KindOfWire>("size", "Size", ({ size }) => sizeInWords(size)),
  words<KindOfWire>("colour", "Colour", ({ colour }) => colour),
  words<KindOfWire>("insulation", "Insulation", ({ insulation }) => insulation),
];

/** AWG before metric, thinnest first, then by colour. */
function kindsOfWire(numbered: readonly NumberedWire[], { spools }: BenchSettings): KindOfWire[] {
  const kinds = new Map<
    string,
    Omit<KindOfWire, "nesting" | "pieces" | "spoolsStated"> & { pieces: Piece[] }
  >();
  for (const one of numbered) {
    const { wire } = one;
    const size: Conductor = { ...wire.size, parallel: 1 };
    const colour = wire.colour || "not stated";
    const insulation = insulationInWords(wire);
    const key = JSON.stringify([size, colour, insulation]);
    const kind = kinds.get(key) ?? { size, colour, insulation, pieces: [] };
    kinds.set(key, kind);
    for (let piece = 0; piece < wire.size.parallel; piece++)
      kind.pieces.push({ number: numberText(one), lengthM: wire.cutLengthM });
  }
  return [...kinds.values()]
    .sort(
      (one, other) =>
        one.size.system.localeCompare(other.size.system, "en") ||
        crossSectionMm2(one.size) - crossSectionMm2(other.size) ||
        compareText(one.colour, other.colour) ||
        compareText(one.insulation, other.insulation),
    )
    .map((kind) => {
      const stated = spools.filter((spool) => isOfKind(spool, kind));
      const offers = stated.length > 0 ? stated : usualSpools(kind.size);
      return { ...kind, nesting: nestPieces(kind.pieces, offers), spoolsStated: stated.length > 0 };
    });
}

function isOfKind({ size, colour }: Spool, kind: Pick<KindOfWire, "size" | "colour">): boolean {
  const sameSize =
    "awg" in size
      ? kind.size.system === "awg" && size.awg === kind.size.awg
      : kind.size.system === "metric" && size.mm2 === kind.size.mm2;
  return sameSize && (colour === undefined || colour.toLowerCase() === kind.colour.toLowerCase());
}

function usualSpools({ system }: Conductor): Offer[] {
  const { awgFt, metricM } = usualSpoolLengths;
  if (system === "metric") return metricM.map((lengthM) => ({ lengthM }));
  return awgFt.map((lengthFt) => ({ lengthM: lengthFt * metresPerFoot }));
}

function spoolNotes(
  kinds: readonly KindOfWire[],
  prices: readonly (number | undefined)[],
  { currency }: BenchSettings,
  wires: readonly NumberedWire[],
): string[] {
  const { awgFt, metricM } = usualSpoolLengths;
  const notes = ["Every piece is cut from one spool, without a joint."];
  const guessed = kinds.filter(({ spoolsStated }) => !spoolsStated);
  if (guessed.length > 0) {
    const lengths = [
      guessed.some(({ size }) => size.system === "awg") ? `${awgFt.join(", ")} ft (AWG)` : "",
      guessed.some(({ size }) => size.system === "metric") ? `${metricM.join(", ")} m (mm²)` : "",
    ].filter(Boolean);
    notes.push(
      `If the build states no spools of a size, usual lengths are taken: ${lengths.join(" and ")}; common practice, no source.`,
    );
  }
  notes.push(
    "Chosen for the least price if every spool of a kind has one, else for the least wire bought, then for the fewest spools. A better cut may exist.",
  );
  const boughtM = sum(kinds.flatMap(({ nesting }) => nesting.spools.map(({ offer }) => offer.lengthM)));
  const usedM = sum(kinds.flatMap(({ nesting }) => nesting.spools.map(({ pieces }) => lengthOf(pieces))));
  const count = sum(kinds.map(({ nesting }) => nesting.spools.length));
  if (boughtM > 0)
    notes.push(
      `${count} ${count === 1 ? "spool" : "spools"}, ${formatRounded(boughtM)} m in all; left over ${formatRounded(boughtM - usedM)} m, ${formatRounded((100 * (boughtM - usedM)) / boughtM)} %.`,
    );
  if (prices.some((price) => price !== undefined)) notes.push(sumInWords(prices, currency));
  return [...notes, ...notKeptNotes(wires)];
}

/** "25 ft", "50 m": as it is sold. */
function spoolInWords({ lengthM }: Offer, { system }: Conductor): string {
  return system === "awg" ? `${formatExact(lengthM / metresPerFoot)} ft` : `${formatExact(lengthM)} m`;
}

function pieceInWords(lengthM: number, { system }: Conductor): string {
  return system === "awg" ? feetAndInches(lengthM) : `${lengthToCut(lengthM).text} m`;
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

function sum(all: readonly number[]): number {
  return all.reduce((total, one) => total + one, 0);
}

/** By code point: every machine sorts alike. */
function compareText(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}
