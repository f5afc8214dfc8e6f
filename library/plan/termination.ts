/**
 * The fastening of a conductor at a terminal: a ring terminal on a stud or screw of this size, a bare or ferruled end in a
 * screw clamp, or a receptacle on a flat tab.
 */
export type Termination =
  | "#6"
  | "#8"
  | "#10"
  | "1/4 in"
  | "5/16 in"
  | "3/8 in"
  | "1/2 in"
  | "M3.5"
  | "M4"
  | "M5"
  | "M6"
  | "M8"
  | "M10"
  | "M12"
  | "screw clamp"
  | "6.3 mm tab";
