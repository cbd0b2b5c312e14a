import { findUnit, kinds, type System, shownUnit } from '../quantities/index.ts';
import { bikeInputs, type DayInput, inputOf, type Place, runInputs, setupInputs } from './inputs.ts';

/*
 * Columns of a table of runs: what this site writes over them, and what it understands when others wrote them.
 */

/** What a column holds: the name of an input behind its place, as in `run.time`, or one of the columns that are no input. */
export type Target = `${Place}.${string}` | Mark;

/** Columns that are no input. `row` says whether a row is the day, a bike or a run; `number` is the bike's place in the list. */
export type Mark = 'row' | 'number' | 'assisted' | 'counted' | 'units' | 'comparing' | 'ignore';

export interface Column {
  target: Target;
  /** what is written over it, without its unit */
  title: string;
  /** what else is understood, in small letters, without marks between words */
  also: readonly string[];
}

/** Titles that say more in a table than beside a field. */
const TITLES: Readonly<Record<string, string>> = { 'bike.name': 'Bike', 'bike.bike': 'Bike mass' };

const ALSO: Readonly<Record<string, string>> = {
  'run.time':
    'elapsed,elapsed time,duration,lap time,climb time,measured time,finish time,run time,ride time,time taken,moving time,clock',
  'run.power':
    'power,watts,watt,w,avg power,average power,mean power,avg watts,average watts,mean watts,rider watts,my power,my watts,human power,leg power,legs,pedal power,input power,power rider',
  'run.cadence': 'rpm,avg cadence,average cadence,mean cadence,pedalling rate',
  'run.start':
    'start,battery before,battery start,battery at start,start battery,charge before,charge at start,start charge,soc before,soc start,start soc,battery before ride,gauge start,battery in',
  'run.end':
    'end,battery after,battery end,battery at end,end battery,charge after,charge at end,end charge,soc after,soc end,end soc,battery left,gauge end,battery out,remaining',
  'run.speed': 'speed,avg speed,average speed,mph,km h,kph,kmh',
  'run.rider': 'rider mass,rider weight,weight rider,mass rider,body weight,body mass,rider with kit,rider and kit',
  'run.wind': 'wind,headwind,wind speed',
  'run.note': 'notes,comment,comments,remark,remarks,observation,observations,memo',
  'bike.name': 'name,bike name,name of bike,ebike,e bike,model,variant,setup,set up,machine,configuration',
  'bike.bike': 'mass,weight,bike weight,weight bike,mass bike,weight of bike,mass of bike,total bike weight',
  'bike.motor':
    'peak power,motor power,motor,motor peak,motor watts,claimed power,claimed peak,peak watts,max motor power,motor gives,power claimed',
  'bike.limit': 'limit,speed limit,assist speed limit,cut off,cutoff,limiter',
  'bike.battery': 'battery size,battery energy,battery capacity,capacity,battery label,nominal energy,pack,wh',
  'bike.support': 'support ratio,assist ratio,assistance ratio,support factor,support level',
  'setup.place': 'place,location,where',
  'setup.tester': 'tester,tested by,ridden by,rider name,name of rider',
  'bike.tyres':
    'tyres,tyre,tires,tire,tire and pressure,tyre pressure,tire pressure,tyres and pressure,tires and pressure',
};

const MARKS: readonly Column[] = [
  { target: 'row', title: 'Row', also: ['row kind'] },
  { target: 'number', title: 'Bike no.', also: ['bike no', 'bike number'] },
  {
    target: 'assisted',
    title: 'Assisted',
    also: ['assist', 'motor on', 'assistance', 'with motor', 'powered', 'assist on', 'assisted run'],
  },
  { target: 'counted', title: 'Counted', also: ['valid', 'counts', 'use', 'used', 'ok', 'include', 'included'] },
  { target: 'units', title: 'Units', also: ['unit system'] },
  { target: 'comparing', title: 'Comparing', also: [] },
  // the order of the rows says it, or nothing here uses it
  {
    target: 'ignore',
    title: 'Run',
    also: ['no', 'number', 'run no', 'run number', 'order', 'nr', 'lap', 'attempt', 'id', ''],
  },
];

/** Before the titles of set-up columns: two hills and what is known of the first share their words. */
const PREFIXES: Readonly<Record<string, string>> = Object.fromEntries(
  setupInputs.flatMap(({ name, group }) =>
    group === 'target'
      ? [[name, 'Other hill']]
      : group === 'instruments' && name !== 'step'
        ? [[name, 'Known to']]
        : [],
  ),
);

const columnOf = (place: Place, { name, label }: DayInput): Column => {
  const target = `${place}.${name}` as const;
  const title = TITLES[target] ?? label;
  return {
    target,
    title: place === 'setup' ? `${PREFIXES[name] ?? 'Day'}: ${title}` : title,
    also: ALSO[target]?.split(',') ?? [],
  };
};

/** Every column, in the order in which they are written. */
export const columns: readonly Column[] = [
  ...MARKS.slice(0, 2),
  ...bikeInputs.slice(0, 1).map((input) => columnOf('bike', input)),
  ...MARKS.slice(2, 4),
  ...runInputs.map((input) => columnOf('run', input)),
  ...bikeInputs.slice(1).map((input) => columnOf('bike', input)),
  ...MARKS.slice(4, 6),
  ...setupInputs.map((input) => columnOf('setup', input)),
  ...MARKS.slice(6),
];

/** The input that a column holds the texts of. */
export function inputOfTarget(target: Target): { place: Place; input: DayInput } | undefined {
  const [, place, name] = /^(setup|bike|run)\.(.*)$/s.exec(target) ?? [];
  const input = place === undefined || name === undefined ? undefined : inputOf(place as Place, name);
  return input && { place: place as Place, input };
}

/** Small letters and single spaces: brackets, points, underscores and the like say nothing. */
const plain = (title: string): string =>
  title
    .toLowerCase()
    .replace(/[^\p{L}\p{N}%]+/gu, ' ')
    .trim();

const known: ReadonlyMap<string, Target> = new Map(
  // the first of two columns with the same words keeps them
  [...columns].reverse().flatMap(({ target, title, also }) => [...also, plain(title)].map((words) => [words, target])),
);

/** What somebody wrote over a column: what it holds, and the unit of its plain numbers where one is named. */
export interface Heading {
  target: Target;
  /** symbol of a unit of its kind */
  unit?: string;
}

/** Reads a heading in the reader's words: any case, with or without a unit; undefined when it is not understood. */
export function readHeading(said: string): Heading | undefined {
  const title = said.replace(/^\ufeff/, '').trim();
  const raw = /^(setup|bike|run)\.(\S+)$/.exec(title);
  if (raw) return { target: title as Target };
  const [, before = '', bracketed = '', after = ''] = /^(.*?)[([]([^()[\]]*)[)\]](.*)$/s.exec(title) ?? [
    undefined,
    title,
  ];
  const words = plain(`${before} ${after}`);
  const whole = known.get(words) ?? (bracketed ? known.get(plain(title)) : undefined);
  // “mph” and “Watts” name their unit themselves
  if (whole) return withUnit(whole, bracketed.trim() || title);
  // “Time s”, “Battery before %”, “Speed km/h”: the last word may be a unit
  const [, rest = '', last = ''] = /^(.+?)(?:[\s_]+|(?=%$))([^\s_]+)$/s.exec(title) ?? [];
  const target = known.get(plain(rest));
  const found = target && withUnit(target, last);
  return found?.unit === undefined ? undefined : found;
}

/** A heading with its unit, where that is a unit of its kind: “7:22 (mm:ss)” names none. */
function withUnit(target: Target, said: string): Heading {
  const kind = inputOfTarget(target)?.input.kind ?? 'text';
  const unit = said === '' || kind === 'text' ? undefined : findUnit(said, kind);
  return { target, ...(unit ? { unit: unit.symbol } : {}) };
}

/** What this site writes over a column: its title, with the unit of plain numbers. */
export function headingOf({ target, title }: Column, system: System): string {
  const found = inputOfTarget(target);
  if (!found || found.input.kind === 'text' || found.input.kind === 'duration') return title;
  const unit = shownUnit(found.input.kind, system).text;
  return unit === '' ? title : `${title} (${unit})`;
}

/** The unit that a plain number of this column has where nothing else is said; a plain time has none. */
export const plainUnit = (target: Target, system: System): string => {
  const kind = inputOfTarget(target)?.input.kind;
  return kind === undefined || kind === 'duration' ? '' : system === 'us' ? kinds[kind].us : kinds[kind].metric;
};
