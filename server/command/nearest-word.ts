/**
 * The known word that a mistyped one most probably means: the one with the fewest edits (a letter added, left out or replaced, two
 * neighbours exchanged), or a longer one that begins with the typed letters. Undefined if none is near enough, or if several
 * are equally near.
 */
export function nearestWord(typed: string, known: readonly string[]): string | undefined {
  const word = typed.toLowerCase();
  const begun = word.length >= 2 ? known.filter((one) => one.startsWith(word)) : [];
  if (begun.length === 1) return begun[0];
  const ranked = known
    .map((one) => ({ one, edits: editsBetween(word, one) }))
    .filter(({ one, edits }) => edits <= mostEdits(Math.min(word.length, one.length)))
    .sort((a, b) => a.edits - b.edits);
  const [first, second] = ranked;
  return first && first.edits !== second?.edits ? first.one : undefined;
}

/** One edit in three letters: more, and any short word is like any other. */
function mostEdits(letters: number): number {
  return Math.min(3, Math.floor(letters / 3));
}

/** The optimal string alignment distance: insertions, deletions, substitutions and exchanges of neighbours. */
function editsBetween(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const now = [row];
    for (let column = 1; column <= b.length; column++) {
      const replaced = last[column - 1]! + (a[row - 1] === b[column - 1] ? 0 : 1);
      const exchanged =
        row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1]
          ? beforeLast[column - 2]! + 1
          : Number.POSITIVE_INFINITY;
      now.push(Math.min(replaced, exchanged, last[column]! + 1, now[column - 1]! + 1));
    }
    [beforeLast, last] = [last, now];
  }
  return last[b.length]!;
}
