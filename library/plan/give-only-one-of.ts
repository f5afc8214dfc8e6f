declare const forbidden: unique symbol;

/**
 * The type of a property that must not be given, because another one already says the same thing. No value has this
 * type: its name is the message that the compiler prints, e.g. `GiveOnlyOneOf<"gauge, mm2">`.
 */
export interface GiveOnlyOneOf<Names extends string> {
  readonly [forbidden]: Names;
}
