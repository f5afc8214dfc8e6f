/** Colour of a conductor's insulation: one of these usual ones, or any other in up to 40 characters. */
export type Colour =
  | "red"
  | "black"
  | "yellow"
  | "brown"
  | "orange"
  | "blue"
  | "purple"
  | "grey"
  | "white"
  | "pink"
  | "green"
  | "green with yellow stripe"
  | (string & Record<never, never>);
