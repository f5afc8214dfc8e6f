/** What every run from the bank has in common. */
export const feeder = { critical: true, fromBattery: true, sheathed: true } as const;

/** What every run from the panel has in common: in conduit along the roof, beside the conductors of one other run. */
export const panel = { sheathed: true } as const;
