/** The range in which two texts differ: between their common beginning and their common end. */
export interface ChangedRange {
  readonly start: number;
  readonly endBefore: number;
  readonly endAfter: number;
}

export function changedRange(before: string, after: string): ChangedRange {
  const shorter = Math.min(before.length, after.length);
  let start = 0;
  let same = 0;
  // In strides first: comparing two slices is far quicker than comparing them by character.
  const alike = (inBefore: number, inAfter: number, length: number) =>
    before.slice(inBefore, inBefore + length) === after.slice(inAfter, inAfter + length);
  for (const stride of [1_024, 1]) {
    while (start + stride <= shorter && alike(start, start, stride)) start += stride;
  }
  for (const stride of [1_024, 1]) {
    for (let more = same + stride; more <= shorter - start; more += stride) {
      if (!alike(before.length - more, after.length - more, stride)) break;
      same = more;
    }
  }
  return { start, endBefore: before.length - same, endAfter: after.length - same };
}
