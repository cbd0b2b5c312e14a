import type { Kind } from '../quantities/index.ts';

/** Addresses a calculator: `/calculators/NAME/`. */
export type CalculatorName = 'climb-time' | 'side-by-side' | 'bigger-hill' | 'power-to-weight';

export type Group = 'hill' | 'rider' | 'bike' | 'conditions' | 'control' | 'target' | 'companion';

/**
 * One input of the public vocabulary. `min` and `max` are SI (grade as tan, percent as a ratio, temperature in °C, cadence in rpm).
 * The table below is the only place that knows names, units, ranges and wording: links, fields, `/reference/links/` and prose read it.
 */
export interface Parameter {
  name: string;
  group: Group;
  kind: Kind;
  min: number;
  max: number;
  /** a link carries one value per bike or per control run, separated by commas */
  list?: 'bike' | 'control';
  /** the word `none` is a value: no motor, no assist limit, no control run */
  allowNone?: boolean;
  /** beside the field */
  label: string;
  /** one sentence for the links page and below the field where `hint` is set */
  meaning: string;
  hint?: string;
}

// the same arithmetic as a typed value, so that a typed default is the default to the last digit
const kmh = (value: number): number => (value * 5) / 18;
const wattHours = (value: number): number => value * 3600;

export const parameters: readonly Parameter[] = [
  {
    name: 'distance',
    group: 'hill',
    kind: 'distance',
    min: 20,
    max: 200_000,
    label: 'Along the road',
    meaning: 'Length of the climb along the road or track.',
  },
  {
    name: 'gain',
    group: 'hill',
    kind: 'height',
    min: 0,
    max: 9000,
    label: 'Height gained',
    meaning: 'Height from bottom to top. Beats `grade`.',
  },
  {
    name: 'grade',
    group: 'hill',
    kind: 'grade',
    min: -0.4,
    max: 0.6,
    label: 'Or mean grade',
    meaning: 'Mean grade as rise over horizontal run (tan), in place of `gain`.',
    hint: 'Used when the height is left empty. 10 %, 1 in 10 and 5.7° all work.',
  },
  {
    name: 'altitude',
    group: 'conditions',
    kind: 'height',
    min: -430,
    max: 6000,
    label: 'Altitude',
    meaning: 'Altitude of the hill, which thins the air.',
  },
  {
    name: 'temperature',
    group: 'conditions',
    kind: 'temperature',
    min: -40,
    max: 50,
    label: 'Temperature',
    meaning: 'Air temperature.',
  },
  {
    name: 'wind',
    group: 'conditions',
    kind: 'wind',
    min: -20,
    max: 20,
    label: 'Head wind',
    meaning: 'Wind along the road at rider height, head wind positive, tail wind negative.',
  },
  {
    name: 'rolling',
    group: 'conditions',
    kind: 'ratio',
    min: 0,
    max: 0.15,
    label: 'Rolling resistance',
    meaning: 'Coefficient of rolling resistance C_rr of tyre and surface.',
    hint: 'Smooth asphalt about 0.004, rough trail 0.03. Left at its default it carries the range of an unsurveyed trail.',
  },
  {
    name: 'drag',
    group: 'conditions',
    kind: 'area',
    min: 0.1,
    max: 1.2,
    label: 'Drag area',
    meaning: 'Drag area C_dA of rider and bike.',
  },
  {
    name: 'drive',
    group: 'conditions',
    kind: 'percent',
    min: 0.5,
    max: 1,
    label: 'Chain and gears',
    meaning: 'Efficiency of the drive from crank to wheel.',
  },
  {
    name: 'unit',
    group: 'conditions',
    kind: 'percent',
    min: 0.5,
    max: 1,
    label: 'Drive unit',
    meaning: 'Efficiency of the drive unit from battery to crank.',
  },
  {
    name: 'rider',
    group: 'rider',
    kind: 'mass',
    min: 25,
    max: 250,
    label: 'Body and kit',
    meaning: 'Mass of the rider with clothes, bag and water.',
  },
  {
    name: 'power',
    group: 'rider',
    kind: 'power',
    min: 0,
    max: 1500,
    label: 'Power you hold',
    meaning: 'Mean power of the rider over the climb, at the crank.',
  },
  {
    name: 'cadence',
    group: 'rider',
    kind: 'cadence',
    min: 20,
    max: 160,
    label: 'Cadence',
    meaning: 'Turns of the crank per minute.',
  },
  {
    name: 'name',
    group: 'bike',
    kind: 'text',
    min: 0,
    max: 40,
    list: 'bike',
    label: 'Name',
    meaning: 'What you call the bike, up to 40 characters.',
  },
  {
    name: 'bike',
    group: 'bike',
    kind: 'mass',
    min: 5,
    max: 80,
    list: 'bike',
    label: 'Bike mass',
    meaning: 'Mass of the bike, battery included.',
  },
  {
    name: 'motor',
    group: 'bike',
    kind: 'power',
    min: 0,
    max: 3000,
    list: 'bike',
    allowNone: true,
    label: 'Motor gives',
    meaning: 'Mean output of the motor at the crank below the assist limit.',
    hint: 'What it gives on a climb, not what it is rated. Write none for a bike without a motor.',
  },
  {
    name: 'torque',
    group: 'bike',
    kind: 'torque',
    min: 5,
    max: 250,
    list: 'bike',
    label: 'Motor torque',
    meaning: 'Largest torque of the motor at the crank.',
  },
  {
    name: 'support',
    group: 'bike',
    kind: 'percent',
    min: 0,
    max: 10,
    list: 'bike',
    label: 'Support',
    meaning: 'Motor power as a percentage of rider power.',
  },
  {
    name: 'battery',
    group: 'bike',
    kind: 'energy',
    min: wattHours(10),
    max: wattHours(5500),
    list: 'bike',
    label: 'Battery',
    meaning: 'Nominal energy of the battery.',
  },
  {
    name: 'limit',
    group: 'bike',
    kind: 'speed',
    min: kmh(5),
    max: kmh(100),
    list: 'bike',
    allowNone: true,
    label: 'Assist limit',
    meaning: 'Speed at which the motor must have stopped helping.',
    hint: 'What applies to you is local law. Write none where nothing limits the motor.',
  },
  {
    name: 'time',
    group: 'bike',
    kind: 'duration',
    min: 5,
    max: 360_000,
    list: 'bike',
    label: 'Measured time',
    meaning: 'Time of the bike up the measured hill. Beats `motor`.',
  },
  {
    name: 'control-time',
    group: 'control',
    kind: 'duration',
    min: 5,
    max: 360_000,
    list: 'control',
    allowNone: true,
    label: 'Time',
    meaning: 'Time of a control run: known rider power, no assistance. `none` removes the example’s run.',
  },
  {
    name: 'control-power',
    group: 'control',
    kind: 'power',
    min: 1,
    max: 1500,
    list: 'control',
    label: 'Rider power',
    meaning: 'Mean rider power of the control run.',
  },
  {
    name: 'control-bike',
    group: 'control',
    kind: 'mass',
    min: 5,
    max: 80,
    list: 'control',
    label: 'Bike mass',
    meaning: 'Mass of the bike of the control run.',
  },
  {
    name: 'control-rider',
    group: 'control',
    kind: 'mass',
    min: 25,
    max: 250,
    list: 'control',
    label: 'Body and kit',
    meaning: 'Mass of the rider of the control run; `rider` if absent.',
  },
  {
    name: 'target-distance',
    group: 'target',
    kind: 'distance',
    min: 20,
    max: 200_000,
    label: 'Along the road',
    meaning: 'Length of the other hill. One of distance or gain is needed.',
    hint: 'Leave empty to work it out from height and grade.',
  },
  {
    name: 'target-gain',
    group: 'target',
    kind: 'height',
    min: 0,
    max: 9000,
    label: 'Height gained',
    meaning: 'Height of the other hill. Beats `target-grade` when the distance is given too.',
  },
  {
    name: 'target-grade',
    group: 'target',
    kind: 'grade',
    min: -0.4,
    max: 0.6,
    label: 'Mean grade',
    meaning: 'Mean grade of the other hill (tan); the measured grade if absent.',
    hint: 'Leave empty for the same grade as the measured hill.',
  },
  {
    name: 'target-altitude',
    group: 'target',
    kind: 'height',
    min: -430,
    max: 6000,
    label: 'Altitude there',
    meaning: 'Altitude of the other hill; as measured if absent.',
  },
  {
    name: 'target-temperature',
    group: 'target',
    kind: 'temperature',
    min: -40,
    max: 50,
    label: 'Temperature there',
    meaning: 'Air temperature on the other hill; as measured if absent.',
  },
  {
    name: 'target-wind',
    group: 'target',
    kind: 'wind',
    min: -20,
    max: 20,
    label: 'Head wind there',
    meaning: 'Head wind on the other hill; as measured if absent.',
  },
  {
    name: 'target-rolling',
    group: 'target',
    kind: 'ratio',
    min: 0,
    max: 0.15,
    label: 'Rolling resistance there',
    meaning: 'C_rr on the other hill; that of the measured hill after calibration if absent.',
  },
  {
    name: 'target-rider',
    group: 'target',
    kind: 'mass',
    min: 25,
    max: 250,
    label: 'Body and kit there',
    meaning: 'Mass of the rider on the other hill; as measured if absent.',
  },
  {
    name: 'target-power',
    group: 'target',
    kind: 'power',
    min: 0,
    max: 1500,
    label: 'Power held there',
    meaning: 'Rider power on the other hill; as measured if absent.',
  },
  {
    name: 'companion-rider',
    group: 'companion',
    kind: 'mass',
    min: 25,
    max: 250,
    label: 'Body and kit',
    meaning: 'Mass of the companion with kit.',
  },
  {
    name: 'companion-power',
    group: 'companion',
    kind: 'power',
    min: 0,
    max: 1500,
    label: 'Power held',
    meaning: 'Rider power of the companion.',
  },
  {
    name: 'companion-bike',
    group: 'companion',
    kind: 'mass',
    min: 5,
    max: 80,
    label: 'Bike mass',
    meaning: 'Mass of the companion’s bike.',
  },
  {
    name: 'companion-motor',
    group: 'companion',
    kind: 'power',
    min: 0,
    max: 3000,
    allowNone: true,
    label: 'Motor gives',
    meaning: 'Motor output of the companion’s bike.',
  },
];

const byName = new Map(parameters.map((parameter) => [parameter.name, parameter]));

/** The parameter of that name. @throws RangeError for a name that the vocabulary does not have: a mistake in our own code. */
export function parameterOf(name: string): Parameter {
  const parameter = byName.get(name);
  if (!parameter) throw new RangeError(`The vocabulary has no parameter “${name}”.`);
  return parameter;
}

/** Values of version 1 of the vocabulary, SI. A list has one default per column, the last one serving all further columns; null is the word `none`. Absent: no default, the field starts empty. */
export type Defaults = Readonly<Record<string, number | string | null | readonly (number | string | null)[]>>;

/** Shared by every calculator. The hill and the bikes are invented; ranges and sources of the physical ones stand in `doubts.ts`. */
const COMMON: Defaults = {
  distance: 2400,
  gain: 235,
  altitude: 500,
  temperature: 15,
  wind: 0,
  rolling: 0.028,
  drag: 0.45,
  drive: 0.96,
  unit: 0.8,
  rider: 82,
  power: 170,
  limit: kmh(25),
};

const THREE_BIKES: Defaults = {
  name: ['Light', 'Mid', 'Full', 'Bike 4', 'Bike 5', 'Bike 6'],
  bike: [17, 21, 24, 22],
  motor: [280, 400, 560, 400],
  battery: [wattHours(360), wattHours(540), wattHours(720), wattHours(540)],
};

export interface Calculator {
  name: CalculatorName;
  title: string;
  /** inputs in the order of the form, by section; `folded` ones stand under the fold */
  sections: readonly { group: Group; names: readonly string[]; folded?: readonly string[] }[];
  /** how many bikes it takes, and how many its example has */
  bikes: { min: number; max: number; example: number };
  /** control runs of the example; 0 to 6 can be given where there is a control section */
  controls: number;
  /** by version of the vocabulary: a link without `v` means version 1 for ever */
  defaults: Readonly<Record<number, Defaults>>;
}

const HILL = { group: 'hill', names: ['distance', 'gain', 'grade'] } as const;
const RIDER = { group: 'rider', names: ['rider', 'power'] } as const;
const CONDITIONS = {
  group: 'conditions',
  names: [],
  folded: ['rolling', 'drag', 'drive', 'unit', 'altitude', 'temperature', 'wind'],
} as const;

export const calculators: Readonly<Record<CalculatorName, Calculator>> = {
  'climb-time': {
    name: 'climb-time',
    title: 'Climb time',
    sections: [HILL, RIDER, { group: 'bike', names: ['bike', 'motor'], folded: ['battery', 'limit'] }, CONDITIONS],
    bikes: { min: 1, max: 1, example: 1 },
    controls: 0,
    defaults: { 1: { ...COMMON, name: 'Bike', bike: 20, motor: 380, battery: wattHours(540) } },
  },
  'side-by-side': {
    name: 'side-by-side',
    title: 'Side by side',
    sections: [
      HILL,
      RIDER,
      { group: 'bike', names: ['name', 'bike', 'motor'], folded: ['time', 'battery', 'limit'] },
      CONDITIONS,
    ],
    bikes: { min: 2, max: 6, example: 3 },
    controls: 0,
    defaults: { 1: { ...COMMON, ...THREE_BIKES } },
  },
  'bigger-hill': {
    name: 'bigger-hill',
    title: 'Bigger hill',
    sections: [
      HILL,
      RIDER,
      { group: 'bike', names: ['name', 'bike', 'time'], folded: ['battery', 'limit'] },
      { group: 'control', names: ['control-time', 'control-power', 'control-bike'], folded: ['control-rider'] },
      {
        group: 'target',
        names: ['target-gain', 'target-grade'],
        folded: [
          'target-distance',
          'target-rider',
          'target-power',
          'target-rolling',
          'target-altitude',
          'target-temperature',
          'target-wind',
        ],
      },
      CONDITIONS,
    ],
    bikes: { min: 1, max: 6, example: 3 },
    controls: 1,
    defaults: {
      1: {
        ...COMMON,
        ...THREE_BIKES,
        time: [704, 575, 478, 600],
        'control-time': [1720, 1360],
        'control-power': [170, 220],
        'control-bike': [13],
        'target-gain': 600,
      },
    },
  },
  'power-to-weight': {
    name: 'power-to-weight',
    title: 'Power to weight',
    sections: [RIDER, { group: 'bike', names: ['bike', 'motor'], folded: ['limit'] }, HILL, CONDITIONS],
    bikes: { min: 1, max: 1, example: 1 },
    controls: 0,
    defaults: { 1: { ...COMMON, name: 'Bike', bike: 20, motor: 380 } },
  },
};

export const VERSION = 1;

/** Every parameter that a calculator reads. */
export function namesOf(calculator: CalculatorName): string[] {
  return calculators[calculator].sections.flatMap((section) => [...section.names, ...(section.folded ?? [])]);
}

/** Default of a parameter in a column (from 0), SI; undefined where the field starts empty. */
export function defaultOf(
  calculator: CalculatorName,
  name: string,
  column = 0,
  version = VERSION,
): number | string | null | undefined {
  const value = calculators[calculator].defaults[version]?.[name];
  return Array.isArray(value) ? (value[column] ?? value.at(-1)) : (value as number | string | null | undefined);
}
