import type { Use } from "../plan/use.ts";

/** The hours of a device as its plan states them; a refused value is left out. */
export type UseValues = { readonly [Name in keyof Use]?: Use[Name] | undefined };
