/** Properties of all heavy cables: each is in a sheath of its own. */
export const heavy = { sheathed: true } as const;

/** Beside a bank like this one, a fuse must be able to interrupt more than most blade and strip fuses can. */
export const classT = { family: "UL 248-15 Class T", interruptingA: 20_000 } as const;
