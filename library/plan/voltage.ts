/**
 * Nominal voltage of the system, V: 12, 24, 48, or another number from 1 to 50; or 51.2, the label of a LiFePO4 battery of 48 V.
 * Above 50 V neither the tables nor these rules apply.
 */
export type NominalVoltage = 12 | 24 | 48 | (number & Record<never, never>);
