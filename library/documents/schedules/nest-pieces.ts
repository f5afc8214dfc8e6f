/**
 * Puts pieces onto spools that can be bought, each piece whole on one spool. Aims for the least price if every spool has one,
 * else for the least wire bought; among equals for the fewest spools.
 *
 * One-dimensional cutting stock. First-fit decreasing into spools of each length; every spool is then swapped for the shortest
 * that holds its pieces, and emptied into the others if that saves something; the best result is kept. With one length of spool,
 * that is never more than 11/9 of the fewest possible spools and 6/9 of one (Dósa, "The tight bound of First Fit Decreasing",
 * 2007).
 */
export function nestPieces<Piece extends { readonly lengthM: number }>(
  pieces: readonly Piece[],
  offers: readonly Offer[],
): Nesting<Piece> {
  const longestM = Math.max(0, ...offers.map(({ lengthM }) => lengthM));
  const tooLong = pieces.filter(({ lengthM }) => !fits(lengthM, longestM));
  const toPlace = pieces
    .filter(({ lengthM }) => fits(lengthM, longestM))
    .sort((one, other) => other.lengthM - one.lengthM);
  if (toPlace.length === 0) return { spools: [], tooLong };
  const sorted = [...offers].sort((one, other) => one.lengthM - other.lengthM || costOf(one) - costOf(other));
  const choice: Choice = { offers: sorted, priced: offers.every(({ price }) => price !== undefined) };
  const tries = sorted
    .filter(({ lengthM }) => fits(toPlace[0]!.lengthM, lengthM))
    .map((offer) => improved(firstFit(toPlace, offer), choice));
  tries.push(improved(eachAlone(toPlace, choice), choice));
  const best = tries.reduce((one, other) => (isBetter(other, one, choice) ? other : one));
  return { spools: inOrder(best), tooLong };
}

/** A spool that can be bought. */
export interface Offer {
  readonly lengthM: number;
  /** Of the whole spool. */
  readonly price?: number | undefined;
}

export interface Nesting<Piece> {
  readonly spools: readonly { readonly offer: Offer; readonly pieces: readonly Piece[] }[];
  /** Longer than every spool. */
  readonly tooLong: readonly Piece[];
}

/** Longest spools and longest pieces first, as they are cut. */
function inOrder<Piece extends Placed>(spools: readonly Filled<Piece>[]): Nesting<Piece>["spools"] {
  return [...spools]
    .sort((one, other) => other.offer.lengthM - one.offer.lengthM || other.usedM - one.usedM)
    .map(({ offer, pieces }) => ({
      offer,
      pieces: [...pieces].sort((one, other) => other.lengthM - one.lengthM),
    }));
}

interface Filled<Piece> {
  readonly offer: Offer;
  readonly pieces: readonly Piece[];
  readonly usedM: number;
}

interface Choice {
  /** Shortest first. */
  readonly offers: readonly Offer[];
  /** All of them have a price. */
  readonly priced: boolean;
}

type Placed = { readonly lengthM: number };

/** Beyond this many spools, trying every pair of them takes longer than it saves. */
const mostImproved = 100;

function firstFit<Piece extends Placed>(longestFirst: readonly Piece[], offer: Offer): Filled<Piece>[] {
  const spools: { readonly pieces: Piece[]; usedM: number }[] = [];
  const room = new RoomOnSpools(longestFirst.length, offer.lengthM);
  for (const piece of longestFirst) {
    const first = room.firstFor(piece.lengthM);
    spools[first] ??= { pieces: [], usedM: 0 };
    const spool = spools[first];
    spool.pieces.push(piece);
    spool.usedM += piece.lengthM;
    room.set(first, offer.lengthM - spool.usedM);
  }
  return spools.map((spool) => ({ offer, ...spool }));
}

/** The free length on each of a row of spools, as a tree of maxima: the first with enough is found without a scan. */
class RoomOnSpools {
  private readonly width: number;
  private readonly greatestM: Float64Array;

  constructor(spools: number, eachM: number) {
    this.width = 2 ** Math.ceil(Math.log2(Math.max(1, spools)));
    this.greatestM = new Float64Array(2 * this.width).fill(eachM);
  }

  /** There is always one: a row has as many spools as there are pieces, and no piece is longer than a spool. */
  firstFor(lengthM: number): number {
    let node = 1;
    while (node < this.width) node = 2 * node + (fits(lengthM, this.greatestM[2 * node]!) ? 0 : 1);
    return node - this.width;
  }

  set(spool: number, freeM: number): void {
    let node = this.width + spool;
    this.greatestM[node] = freeM;
    for (node >>= 1; node >= 1; node >>= 1)
      this.greatestM[node] = Math.max(this.greatestM[2 * node]!, this.greatestM[2 * node + 1]!);
  }
}

/** A spool for each piece: the best start if short spools fit single pieces closely. */
function eachAlone<Piece extends Placed>(pieces: readonly Piece[], choice: Choice): Filled<Piece>[] {
  return pieces.map((piece) => ({
    offer: cheapestFor(piece.lengthM, choice)!,
    pieces: [piece],
    usedM: piece.lengthM,
  }));
}

/** Swaps every spool for the best that holds its pieces, then joins two spools into one and empties spools into others while that saves. */
function improved<Piece extends Placed>(spools: readonly Filled<Piece>[], choice: Choice): Filled<Piece>[] {
  let best = spools.map((spool): Filled<Piece> => ({ ...spool, offer: cheapestFor(spool.usedM, choice)! }));
  if (spools.length > mostImproved) return best;
  for (;;) {
    const better = joined(best, choice) ?? emptied(best, choice);
    if (!better) return best;
    best = better;
  }
}

/** Joins two spools whose pieces fit onto one that is better than both. */
function joined<Piece extends Placed>(
  spools: readonly Filled<Piece>[],
  choice: Choice,
): Filled<Piece>[] | undefined {
  for (let one = 0; one < spools.length; one++) {
    for (let other = one + 1; other < spools.length; other++) {
      const [first, second] = [spools[one]!, spools[other]!];
      const usedM = first.usedM + second.usedM;
      const offer = cheapestFor(usedM, choice);
      if (!offer || !isBetter([{ offer }], [first, second], choice)) continue;
      const both = { offer, pieces: [...first.pieces, ...second.pieces], usedM };
      return [...spools.filter((_, index) => index !== one && index !== other), both];
    }
  }
  return undefined;
}

/** Empties a spool whose pieces all find room on the others, which may have to be longer for it. */
function emptied<Piece extends Placed>(
  spools: readonly Filled<Piece>[],
  choice: Choice,
): Filled<Piece>[] | undefined {
  for (let one = 0; one < spools.length; one++) {
    const rest = spools.filter((_, index) => index !== one);
    let moved: Filled<Piece>[] | undefined = rest;
    for (const piece of spools[one]!.pieces) moved = moved && roomFor(piece, moved, choice);
    if (moved && isBetter(moved, spools, choice)) return moved;
  }
  return undefined;
}

/** The cheapest room for the piece: the rest of a spool, closest first, else a longer one in its place. */
function roomFor<Piece extends Placed>(
  piece: Piece,
  spools: readonly Filled<Piece>[],
  choice: Choice,
): Filled<Piece>[] | undefined {
  let best: Filled<Piece>[] | undefined;
  let leastLeftM = Number.POSITIVE_INFINITY;
  spools.forEach((spool, index) => {
    const usedM = spool.usedM + piece.lengthM;
    const offer = cheapestFor(usedM, choice);
    if (!offer) return;
    const grown = { offer, pieces: [...spool.pieces, piece], usedM };
    const all = spools.map((each, at) => (at === index ? grown : each));
    const leftM = offer.lengthM - usedM;
    const better = !best || isBetter(all, best, choice);
    if (!better && (isBetter(best!, all, choice) || leftM >= leastLeftM)) return;
    best = all;
    leastLeftM = leftM;
  });
  return best;
}

/** The best single spool for this length of wire. */
function cheapestFor(usedM: number, { offers, priced }: Choice): Offer | undefined {
  const [shortest, ...longer] = offers.filter(({ lengthM }) => fits(usedM, lengthM));
  if (!shortest || !priced) return shortest;
  return longer.reduce((best, one) => (costOf(one) < costOf(best) ? one : best), shortest);
}

function isBetter(one: readonly Bought[], other: readonly Bought[], { priced }: Choice): boolean {
  const keys = priced ? [priceOf, boughtOf] : [boughtOf];
  for (const key of keys) {
    const difference = key(one) - key(other);
    if (Math.abs(difference) > dust) return difference < 0;
  }
  return one.length < other.length;
}

function priceOf(spools: readonly Bought[]): number {
  return spools.reduce((sum, { offer }) => sum + costOf(offer), 0);
}

function boughtOf(spools: readonly Bought[]): number {
  return spools.reduce((sum, { offer }) => sum + offer.lengthM, 0);
}

function costOf({ price = 0 }: Offer): number {
  return price;
}

interface Bought {
  readonly offer: Offer;
}

/** Lengths are whole centimetres or inches; rounding of binary sums adds far less. */
const dust = 1e-6;

function fits(lengthM: number, intoM: number): boolean {
  return lengthM <= intoM + dust;
}
