// The same arithmetic as a typed value, so that a typed default is the default to the last digit.

/** km/h in m/s. */
export const kmh = (value: number): number => (value * 5) / 18;
/** Wh in J. */
export const wattHours = (value: number): number => value * 3600;
/** kJ in J. */
export const kilojoules = (value: number): number => value * 1000;
/** mm in m. */
export const millimetres = (value: number): number => value / 1000;
/** Ah in coulombs. */
export const ampereHours = (value: number): number => value * 3600;
