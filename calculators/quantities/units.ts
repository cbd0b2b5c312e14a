/**
 * Units: what a reader may type, what a page shows, and the exact factor to SI.
 *
 * SI values throughout: m, kg, W, N·m, J, m/s, s, W/kg, m²; a ratio for `percent`; the tangent for `grade`.
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
  | 'mass'
  | 'power'
  | 'torque'
  | 'cadence'
  | 'energy'
  | 'speed'
  | 'wind'
  | 'climb-rate'
  | 'temperature'
  | 'area'
  | 'ratio'
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
  /** Every spelling that is understood: the symbol, the spoken plural, others; separated by commas. */
  names: string;
  /** The same in the form in which spellings are compared. */
  keys: string[];
  /** SI value = (value − zero) × times ÷ over; two whole numbers round once where one factor would round twice. */
  times: number;
  over: number;
  zero: number;
};

export type KindFacts = {
  units: Unit[];
  /** Symbol of the unit that a plain number has in a link. */
  plain: string;
  /** Symbols of the units that a field shows. */
  metric: string;
  us: string;
};

/** One form for all spellings of a unit, or of several between commas: `N·m`, `N m`, `newton meter`, `lbs.` */
export const unitKey = (name: string): string =>
  name
    .toLowerCase()
    .replace(/\s|\^|\.$|(?<=[a-z])[·⋅∙*.-](?=[a-z])/g, '')
    .replaceAll('meter', 'metre')
    .replace(/(?<=[a-z]{2})s(?=,|$)/g, '');

const unit = (
  names: string,
  times = 1,
  over = 1,
  text?: string,
  zero = 0,
  symbol = names.replace(/,.*/, ''),
): Unit => ({ symbol, text: text ?? symbol, names, keys: unitKey(names).split(','), times, over, zero });

// Exact: 0.3048 = 381/1250, 0.9144 = 1143/1250, 0.0254 = 127/5000, 0.44704 = 1397/3125, 1.852/3.6 = 463/900.
const POUND = 45359237; // per 1e8 kg
const none = unit('');
const percent = unit('%,percent,per cent,pct', 1, 100);
const lengths = [
  unit('m,metres'),
  unit('km,kilometres', 1000),
  unit("ft,feet,foot,'", 381, 1250),
  unit('mi,miles', 1609.344),
  unit('yd,yards', 1143, 1250),
  unit("in,inches,inch,\",''", 127, 5000),
];
const speeds = [
  unit('km/h,kilometres per hour,kph,kmh', 5, 18),
  unit('mph,miles per hour,mi/h', 1397, 3125),
  unit('m/s,metres per second'),
  unit('ft/s,feet per second', 381, 1250),
  unit('kn,knots,kt', 463, 900),
];

const kind = (units: Unit[], plain = '', metric = plain, us = metric): KindFacts => ({ units, plain, metric, us });

export const kinds: Record<Kind, KindFacts> = {
  distance: kind(lengths, 'm', 'km', 'mi'),
  height: kind(lengths, 'm', 'm', 'ft'),
  mass: kind([unit('kg,kilograms,kilos'), unit('lb,pounds', POUND, 1e8), unit('g,grams', 1, 1000)], 'kg', 'kg', 'lb'),
  power: kind(
    [
      unit('W,watts'),
      unit('kW,kilowatts', 1000),
      // 550 ft·lbf/s = 745.69987158227022 W; the nearest double prints so.
      unit('hp,horsepower', 745.6998715822702),
    ],
    'W',
  ),
  torque: kind(
    [
      unit('Nm,newton metres', 1, 1, 'N·m'),
      // 0.3048 m × 4.4482216152605 N = 1.3558179483314004 N·m; the nearest double prints so.
      unit('lb-ft,pound feet,foot pounds,lbs ft,lbf ft,ft lb,ft lbf', 1.3558179483314003),
    ],
    'Nm',
    'Nm',
    'lb-ft',
  ),
  cadence: kind([unit('rpm,turns per minute,/min')], 'rpm'),
  energy: kind(
    [
      unit('Wh,watt hours', 3600),
      unit('kWh,kilowatt hours', 36e5),
      unit('J,joules'),
      unit('kJ', 1000),
      unit('MJ', 1e6),
    ],
    'Wh',
  ),
  speed: kind(speeds, 'km/h', 'km/h', 'mph'),
  wind: kind(speeds, 'm/s', 'm/s', 'mph'),
  'climb-rate': kind(
    [unit('m/h,metres per hour', 1, 3600), unit('ft/h,feet per hour', 381, 45e5), unit('m/s,metres per second')],
    'm/h',
    'm/h',
    'ft/h',
  ),
  temperature: kind(
    [
      unit('C,degrees Celsius,Celsius,deg C,°C', 1, 1, '°C'),
      unit('F,degrees Fahrenheit,Fahrenheit,deg F,°F', 5, 9, '°F', 32),
    ],
    'C',
    'C',
    'F',
  ),
  area: kind(
    [
      unit('m2,square metres,sq m', 1, 1, 'm²'),
      unit('ft2,square feet,sq ft', 381 * 381, 1250 * 1250, 'ft²'),
      unit('cm2,square centimetres', 1, 1e4, 'cm²'),
    ],
    'm2',
  ),
  ratio: kind([none, percent]),
  percent: kind([percent], '%'),
  grade: kind([percent, unit('deg,degrees,°', 1, 1, '°')], '%'),
  duration: kind([unit("s,seconds,sec,\",''", 1, 1, ''), unit("min,minutes,m,'", 60), unit('h,hours,hr', 3600)], 's'),
  seconds: kind([unit('s,seconds')], 's'),
  'specific-power': kind([unit('W/kg,watts per kilogram'), unit('W/lb,watts per pound', 1e8, POUND)], 'W/kg'),
  text: kind([]),
};

/** The unit of that kind which a person means by `name`, whatever its case; undefined when there is none. */
export function findUnit(name: string, kind: Kind): Unit | undefined {
  const key = unitKey(name);
  return kinds[kind].units.find((u) => u.keys.includes(key));
}

/** The unit that a field of this kind shows in this system; one without a text for kinds that have none. */
export const shownUnit = (kind: Kind, system: System): Unit =>
  kinds[kind].units.find((u) => u.symbol === kinds[kind][system]) ?? none;

/** The unit's name as it is spoken, in the plural: "kilometres per hour". Empty for a plain number. */
export const spokenUnit = (kind: Kind, system: System): string => shownUnit(kind, system).names.split(',')[1] ?? '';

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
