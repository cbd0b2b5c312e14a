/**
 * Units that pages show, with their exact factors to SI. What else a reader may type stands in `spellings.ts`.
 *
 * SI values throughout: m, kg, W, N·m, N, J, J/m, V, C, m/s, s, W/kg, m²; a ratio for `percent`; the tangent for `grade`.
 * Two values keep a customary unit, because nobody reads or publishes the SI one:
 * a cadence is in rpm, and a temperature is in degrees Celsius (its zero is the only thing kelvin would change).
 *
 * Source of the factors: NIST Special Publication 811 (2008), appendix B.8, and NIST Handbook 44, appendix C;
 * values from memory, digits recomputed. Foot and mile are the international ones; the US survey foot,
 * retired at the end of 2022, is not accepted.
 */

export type Kind =
  | 'distance'
  | 'height'
  /** of a part: a wheel, a crank */
  | 'length'
  | 'mass'
  | 'power'
  | 'torque'
  | 'cadence'
  | 'energy'
  /** done by a person; shown in kilojoules, where batteries have watt-hours */
  | 'work'
  | 'energy-per-distance'
  | 'voltage'
  | 'charge'
  | 'force'
  | 'speed'
  | 'wind'
  | 'climb-rate'
  | 'temperature'
  | 'area'
  | 'ratio'
  /** teeth, laps */
  | 'count'
  | 'percent'
  | 'grade'
  | 'duration'
  /** a difference of times too short for a clock */
  | 'seconds'
  | 'specific-power'
  | 'text';

export type System = 'metric' | 'us';

export type Unit = {
  /** As links write it, in ASCII. */
  symbol: string;
  /** As pages show it; empty where a number stands alone. */
  text: string;
  /** SI value = (value − zero) × times ÷ over; two whole numbers round once where one factor would round twice. */
  times: number;
  over: number;
  zero: number;
};

/** A unit; `times` and `over` as in `Unit`. */
export const unit = (symbol: string, times = 1, over = 1, text = symbol, zero = 0): Unit => ({
  symbol,
  text,
  times,
  over,
  zero,
});

// Exact: 0.3048 = 381/1250, 0.0254 = 127/5000, 0.44704 = 1397/3125, 3600/1609.344 = 3125/1397.
/** Per 1e8 kg. */
export const POUND = 45359237;
export const none = unit('');
export const percent = unit('%', 1, 100);
export const metre = unit('m');
export const kilometre = unit('km', 1000);
export const millimetre = unit('mm', 1, 1000);
export const inch = unit('in', 127, 5000);
export const foot = unit('ft', 381, 1250);
export const yard = unit('yd', 1143, 1250);
export const mile = unit('mi', 1609.344);
export const kilogram = unit('kg');
export const pound = unit('lb', POUND, 1e8);
export const watt = unit('W');
export const newtonMetre = unit('Nm', 1, 1, 'N·m');
// 0.3048 m × 4.4482216152605 N = 1.3558179483314004 N·m; the nearest double prints so.
export const poundFoot = unit('lb-ft', 1.3558179483314003);
export const perMinute = unit('rpm');
export const wattHour = unit('Wh', 3600);
export const kilojoule = unit('kJ', 1000);
export const wattHourPerKilometre = unit('Wh/km', 18, 5);
export const wattHourPerMile = unit('Wh/mi', 3125, 1397);
export const volt = unit('V');
export const ampereHour = unit('Ah', 3600);
export const newton = unit('N');
// 0.45359237 kg × 9.80665 m/s², exact.
export const poundForce = unit('lbf', 4.4482216152605);
export const kilometrePerHour = unit('km/h', 5, 18);
export const milePerHour = unit('mph', 1397, 3125);
export const metrePerSecond = unit('m/s');
export const metrePerHour = unit('m/h', 1, 3600);
export const footPerHour = unit('ft/h', 381, 45e5);
export const celsius = unit('C', 1, 1, '°C');
export const fahrenheit = unit('F', 5, 9, '°F', 32);
export const squareMetre = unit('m2', 1, 1, 'm²');
export const clockSecond = unit('s', 1, 1, '');
export const second = unit('s');
export const wattPerKilogram = unit('W/kg');

/** What fields and results show: one unit for both systems, or metric and US. */
const shown: Record<Kind, Unit | readonly [Unit, Unit]> = {
  distance: [kilometre, mile],
  height: [metre, foot],
  length: [millimetre, inch],
  mass: [kilogram, pound],
  power: watt,
  torque: [newtonMetre, poundFoot],
  cadence: perMinute,
  energy: wattHour,
  work: kilojoule,
  'energy-per-distance': [wattHourPerKilometre, wattHourPerMile],
  voltage: volt,
  charge: ampereHour,
  force: [newton, poundForce],
  speed: [kilometrePerHour, milePerHour],
  wind: [metrePerSecond, milePerHour],
  'climb-rate': [metrePerHour, footPerHour],
  temperature: [celsius, fahrenheit],
  area: squareMetre,
  ratio: none,
  count: none,
  percent,
  grade: percent,
  duration: clockSecond,
  seconds: second,
  'specific-power': wattPerKilogram,
  text: none,
};

/** The unit that a field of this kind shows in this system; one without a text for kinds that have none. */
export function shownUnit(kind: Kind, system: System): Unit {
  const units = shown[kind];
  if ('symbol' in units) return units;
  return system === 'us' ? units[1] : units[0];
}

/**
 * SI value of a number in a unit. A slope in degrees becomes its tangent; from 90° on it has none (infinite).
 */
export function toSi(value: number, u: Unit): number {
  if (u.symbol === 'deg') return Math.abs(value) < 90 ? Math.tan((value * Math.PI) / 180) : value * Infinity;
  return ((value - u.zero) * u.times) / u.over;
}

/** Number in a unit of an SI value: the inverse of `toSi`. */
export function fromSi(si: number, u: Unit): number {
  if (u.symbol === 'deg') return (Math.atan(si) * 180) / Math.PI;
  return (si * u.over) / u.times + u.zero;
}
