/** The bus is open on five days a week. Hours are solar hours. */
export const open = {
  fromHour: 9,
  untilHour: 17,
  daysOfWeek: ["Mon", "Tue", "Wed", "Thu", "Fri"],
} as const;
