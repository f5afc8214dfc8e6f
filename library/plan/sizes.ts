/** AWG sizes that are made and that the tables cover. Sizes of 1/0 and thicker are written as text. */
export type AwgSize = 18 | 16 | 14 | 12 | 10 | 8 | 6 | 4 | 2 | 1 | "1/0" | "2/0" | "3/0" | "4/0";

/** Metric sizes, mm², that are made and that the tables cover. */
export type Mm2Size = 0.75 | 1 | 1.5 | 2.5 | 4 | 6 | 10 | 16 | 25 | 35 | 50 | 70 | 95 | 120 | 150;

/** Temperature ratings of insulation, °C, that the tables cover. */
export type InsulationC = 60 | 70 | 75 | 80 | 85 | 90 | 105 | 125 | 200;

/** Temperature ratings of terminals, °C, as marked on equipment. */
export type TerminalC = 60 | 75 | 90 | 105;

/** Fuse and breaker families, named by their standard. */
export type FuseFamily =
  | "ISO 8820-3 Type F"
  | "ISO 8820-3 Type C"
  | "ISO 8820-3 Type E"
  | "ISO 8820-12 Type N"
  | "ISO 8820-13 Type P"
  | "ISO 8820-4 Type A"
  | "ISO 8820-5 Type SF 30"
  | "ISO 8820-5 Type SF 51"
  | "ISO 8820-6"
  | "ISO 20934"
  | "UL 248-15 Class T"
  | "circuit breaker";
