/** What every run from the bank has in common. */
export const feeder = { critical: true, fromBattery: true, sheathed: true } as const;

/** What every run from the panel has in common: both conductors in one sheath, along the roof. */
export const panel = { sheathed: true } as const;
