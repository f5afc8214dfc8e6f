/** A two-conductor cable: two equal insulated conductors side by side, or laid round, in one sheath. */
export type DuplexCable = "flat duplex" | "round duplex";
