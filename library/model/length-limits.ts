/** International foot and inch, exact since 1959. */
export const metresPerFoot = 0.3048;
export const metresPerInch = 0.0254;

/**
 * The lengths that a plan may state. No conductor between two terminals is shorter than 1 cm; a link without length is one piece of
 * metal with its ends.
 */
export const lengthLimitsFt = { from: 0.03, upTo: 1_000 } as const;
export const lengthLimitsM = { from: 0.01, upTo: 300 } as const;

/**
 * Bounds of an unknown length, m: those of any length that a plan may state. With the shortest for every unknown one, a fault current
 * is no less than the real one, and a drop no greater.
 */
export const shortestM = Math.min(lengthLimitsFt.from * metresPerFoot, lengthLimitsM.from);
export const longestM = Math.max(lengthLimitsFt.upTo * metresPerFoot, lengthLimitsM.upTo);
