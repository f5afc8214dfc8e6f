/** The same choices from the same seed on every machine: mulberry32, public domain. */
export function randomFrom(seed) {
  let state = seed | 0;
  const next = () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  const below = (count) => Math.floor(next() * count);
  return {
    next,
    /** A whole number from 0 to below `count`. */
    below,
    chance: (share) => next() < share,
    pick: (items) => items[below(items.length)],
    /** One of the actions, each a pair of weight and function, by weight. */
    weighted(actions) {
      let at = next() * actions.reduce((sum, [weight]) => sum + weight, 0);
      for (const [weight, action] of actions) {
        at -= weight;
        if (at < 0) return action;
      }
      return actions.at(-1)[1];
    },
  };
}
