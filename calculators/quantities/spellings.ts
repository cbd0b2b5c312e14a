/**
 * Every unit and spelling that is understood, beyond what pages show. Loaded when something is typed or linked.
 * Factors as in `units.ts`, from the same sources.
 */
import {
  ampereHour,
  celsius,
  clockSecond,
  fahrenheit,
  foot,
  footPerHour,
  inch,
  type Kind,
  kilogram,
  kilojoule,
  kilometre,
  kilometrePerHour,
  metre,
  metrePerHour,
  metrePerSecond,
  mile,
  milePerHour,
  millimetre,
  newton,
  newtonMetre,
  none,
  POUND,
  percent,
  perMinute,
  pound,
  poundFoot,
  poundForce,
  type System,
  second,
  shownUnit,
  squareMetre,
  type Unit,
  unit,
  volt,
  watt,
  wattHour,
  wattHourPerKilometre,
  wattHourPerMile,
  wattPerKilogram,
  yard,
} from './units.ts';

/** A unit that can be typed. */
export type SpelledUnit = Unit & {
  /** Every spelling that is understood: the symbol, the spoken plural, others; separated by commas. */
  names: string;
  /** The same in the form in which spellings are compared. */
  keys: string[];
};

export type KindFacts = {
  units: SpelledUnit[];
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

/** A unit with its spellings besides the symbol, the spoken plural first. */
function spell(one: Unit, others = ''): SpelledUnit {
  const names = others ? `${one.symbol},${others}` : one.symbol;
  return { ...one, names, keys: unitKey(names).split(',') };
}

// Exact: 0.9144 = 1143/1250, 1.852/3.6 = 463/900.
const percentage = spell(percent, 'percent,per cent,pct');
const metres = spell(metre, 'metres');
const feet = spell(foot, "feet,foot,'");
const inches = spell(inch, "inches,inch,\",''");
const lengths = [metres, spell(kilometre, 'kilometres'), feet, spell(mile, 'miles'), spell(yard, 'yards'), inches];
const energies = [
  spell(wattHour, 'watt hours'),
  spell(unit('kWh', 36e5), 'kilowatt hours'),
  spell(unit('J'), 'joules'),
  spell(kilojoule, 'kilojoules'),
  spell(unit('MJ', 1e6)),
];
const speeds = [
  spell(kilometrePerHour, 'kilometres per hour,kph,kmh'),
  spell(milePerHour, 'miles per hour,mi/h'),
  spell(metrePerSecond, 'metres per second'),
  spell(unit('ft/s', 381, 1250), 'feet per second'),
  spell(unit('kn', 463, 900), 'knots,kt'),
];

const spelled: Record<Kind, { units: SpelledUnit[]; plain?: string }> = {
  distance: { units: lengths, plain: 'm' },
  height: { units: lengths, plain: 'm' },
  length: {
    units: [spell(millimetre, 'millimetres'), spell(unit('cm', 1, 100), 'centimetres'), metres, inches, feet],
    plain: 'mm',
  },
  mass: {
    units: [spell(kilogram, 'kilograms,kilos'), spell(pound, 'pounds'), spell(unit('g', 1, 1000), 'grams')],
    plain: 'kg',
  },
  power: {
    units: [
      spell(watt, 'watts'),
      spell(unit('kW', 1000), 'kilowatts'),
      // 550 ft·lbf/s = 745.69987158227022 W; the nearest double prints so.
      spell(unit('hp', 745.6998715822702), 'horsepower'),
    ],
    plain: 'W',
  },
  torque: {
    units: [spell(newtonMetre, 'newton metres'), spell(poundFoot, 'pound feet,foot pounds,lbs ft,lbf ft,ft lb,ft lbf')],
    plain: 'Nm',
  },
  cadence: { units: [spell(perMinute, 'turns per minute,/min')], plain: 'rpm' },
  energy: { units: energies, plain: 'Wh' },
  work: { units: energies, plain: 'kJ' },
  'energy-per-distance': {
    units: [
      spell(wattHourPerKilometre, 'watt hours per kilometre'),
      spell(wattHourPerMile, 'watt hours per mile'),
      spell(unit('J/m'), 'joules per metre'),
    ],
    plain: 'Wh/km',
  },
  voltage: { units: [spell(volt, 'volts')], plain: 'V' },
  charge: {
    units: [spell(ampereHour, 'ampere hours,amp hours'), spell(unit('mAh', 18, 5), 'milliampere hours')],
    plain: 'Ah',
  },
  force: { units: [spell(newton, 'newtons'), spell(poundForce, 'pounds force,pound force')], plain: 'N' },
  speed: { units: speeds, plain: 'km/h' },
  wind: { units: speeds, plain: 'm/s' },
  'climb-rate': {
    units: [
      spell(metrePerHour, 'metres per hour'),
      spell(footPerHour, 'feet per hour'),
      spell(metrePerSecond, 'metres per second'),
    ],
    plain: 'm/h',
  },
  temperature: {
    units: [
      spell(celsius, 'degrees Celsius,Celsius,deg C,°C'),
      spell(fahrenheit, 'degrees Fahrenheit,Fahrenheit,deg F,°F'),
    ],
    plain: 'C',
  },
  area: {
    units: [
      spell(squareMetre, 'square metres,sq m'),
      spell(unit('ft2', 381 * 381, 1250 * 1250, 'ft²'), 'square feet,sq ft'),
      spell(unit('cm2', 1, 1e4, 'cm²'), 'square centimetres'),
    ],
    plain: 'm2',
  },
  ratio: { units: [spell(none), percentage] },
  count: { units: [spell(none)] },
  percent: { units: [percentage], plain: '%' },
  grade: { units: [percentage, spell(unit('deg', 1, 1, '°'), 'degrees,°')], plain: '%' },
  duration: {
    units: [
      spell(clockSecond, "seconds,sec,\",''"),
      spell(unit('min', 60), "minutes,m,'"),
      spell(unit('h', 3600), 'hours,hr'),
    ],
    plain: 's',
  },
  seconds: { units: [spell(second, 'seconds')], plain: 's' },
  'specific-power': {
    units: [spell(wattPerKilogram, 'watts per kilogram'), spell(unit('W/lb', 1e8, POUND), 'watts per pound')],
    plain: 'W/kg',
  },
  text: { units: [] },
};

/** All units of each kind, the plain one of links, and those that fields show. */
export const kinds = Object.fromEntries(
  (Object.keys(spelled) as Kind[]).map((kind) => {
    const { units, plain = '' } = spelled[kind];
    return [kind, { units, plain, metric: shownUnit(kind, 'metric').symbol, us: shownUnit(kind, 'us').symbol }];
  }),
) as Record<Kind, KindFacts>;

/** The unit of that kind which a person means by `name`, whatever its case; undefined when there is none. */
export function findUnit(name: string, kind: Kind): SpelledUnit | undefined {
  const key = unitKey(name);
  return kinds[kind].units.find((one) => one.keys.includes(key));
}

/** The unit's name as it is spoken, in the plural: "kilometres per hour". Empty for a plain number. */
export function spokenUnit(kind: Kind, system: System): string {
  const { symbol } = shownUnit(kind, system);
  return kinds[kind].units.find((one) => one.symbol === symbol)?.names.split(',')[1] ?? '';
}
