/** Sets of the numbers 0 to count − 1 that can only merge (union-find). */
export interface DisjointSets {
  /** The representative of this element's set. */
  find(element: number): number;
  /** Merges two sets; returns the representative of the merged set, one of the two previous ones. */
  union(a: number, b: number): number;
}

export function disjointSets(count: number): DisjointSets {
  const parent = new Int32Array(count);
  for (let element = 0; element < count; element++) parent[element] = element;
  const size = new Int32Array(count).fill(1);
  function find(element: number): number {
    let root = element;
    while (parent[root] !== root) {
      parent[root] = parent[parent[root]!]!;
      root = parent[root]!;
    }
    return root;
  }
  function union(a: number, b: number): number {
    let [kept, joined] = [find(a), find(b)];
    if (kept === joined) return kept;
    if (size[kept]! < size[joined]!) [kept, joined] = [joined, kept];
    parent[joined] = kept;
    size[kept]! += size[joined]!;
    return kept;
  }
  return { find, union };
}

/** The numbers 0 to count − 1, with those that any of the branches connects in one set. */
export function joinedBy(
  count: number,
  ...lists: readonly (readonly { readonly a: number; readonly b: number }[])[]
): DisjointSets {
  const sets = disjointSets(count);
  for (const branches of lists) for (const { a, b } of branches) sets.union(a, b);
  return sets;
}
