import type { DayDoubts, TargetHill, TestBike, TestDay, TestRun } from '../model/day/day.ts';
import { distanceForGain, hillFromGrade } from '../model/hill.ts';
import { airDensity, type Hill, hillFromGain } from '../model/index.ts';
import { formatQuantity, type Kind, type System } from '../quantities/index.ts';
import { DAY_DOUBTS, LEAST_ROLLING, rollingDoubt, STATED_ROLLING, UNREAD_POWER } from '../scenario/doubts.ts';
import type { DayBike, DayDocument, DayRun, Texts } from './document.ts';
import { type DayInput, inputOf, type Place, readInput, setupInputs } from './inputs.ts';
import { speedProblem } from './speed-check.ts';

/*
 * Makes numbers of what was typed. Nothing here throws, whatever the texts: what cannot be used is left out and named.
 */

/** A sentence about one text. */
export interface DayProblem {
  /** `setup`, or the id of a bike or a run */
  place: string;
  /** name of the input; see `inputs.ts` */
  name: string;
  message: string;
  /** the run, or all runs of the bike, do not count because of it */
  leavesOut?: true;
}

export interface DayReading {
  /** undefined when nothing can be computed yet; `missing` says why */
  day: TestDay | undefined;
  /** a sentence when there is no day, else empty */
  missing: string;
  doubts: DayDoubts;
  /** ids and names of `day.bikes`, in their order: bikes that cannot be read are left out */
  bikeIds: readonly string[];
  bikeNames: readonly string[];
  /** W claimed as peak, by bike; null is no motor, undefined not stated */
  claimedMotors: readonly (number | null | undefined)[];
  /** ids of `day.runs`, in their order: runs that are not counted or cannot be read are left out */
  runIds: readonly string[];
  /** no run has a power that was read: the target stands in for all of them */
  powerUnread: boolean;
  /** rpm by run, where stated */
  cadences: readonly (number | undefined)[];
  problems: readonly DayProblem[];
  /** inputs of the set-up that were left empty and count with this value, SI */
  defaultsUsed: readonly { name: string; value: number }[];
}

/** Power to compare at when neither a target nor any run tells one, W. */
export const STANDARD_POWER = 170;

/** What a text says: SI, null for `none`, undefined where nothing usable stands. */
type Said = number | null | undefined;

/** Reads texts of one place and collects what is wrong with them. */
class Reader {
  readonly problems: DayProblem[] = [];
  readonly system: System;

  constructor(system: System) {
    this.system = system;
  }

  /** Value of a text; a text that cannot be read is named and counts as absent. */
  value(place: Place, id: string, texts: Texts, name: string): Said {
    const typed = texts[name];
    const input = inputOf(place, name);
    if (!input || typeof typed !== 'string' || typed.trim() === '') return undefined;
    const parsed = readInput(input, typed, this.system);
    if (parsed.ok) return parsed.si;
    if (parsed.reason !== 'empty') this.problems.push({ place: id, name, message: parsed.message });
    return undefined;
  }

  number(place: Place, id: string, texts: Texts, name: string): number | undefined {
    return this.value(place, id, texts, name) ?? undefined;
  }

  /** A text as it counts: undefined when it is empty or too long. */
  text(place: Place, id: string, texts: Texts, name: string): string | undefined {
    const typed = texts[name];
    const input = inputOf(place, name);
    if (!input || typeof typed !== 'string') return undefined;
    const parsed = readInput(input, typed, this.system);
    if (parsed.ok) return parsed.canonical;
    if (parsed.reason !== 'empty') this.problems.push({ place: id, name, message: parsed.message });
    return undefined;
  }

  say(place: string, name: string, message: string, leavesOut?: true): void {
    this.problems.push({ place, name, message, ...(leavesOut ? { leavesOut } : {}) });
  }

  hasProblem(place: string, name: string): boolean {
    return this.problems.some((problem) => problem.place === place && problem.name === name);
  }

  leaveOut(place: string, name: string): void {
    for (const problem of this.problems) if (problem.place === place && problem.name === name) problem.leavesOut = true;
  }

  shown(si: number, kind: Kind): string {
    return formatQuantity(si, kind, this.system, { trim: true });
  }
}

/** Names of the bikes as people see them, by id. */
export function bikeNamesOf(document: DayDocument): Map<string, string> {
  return new Map(document.bikes.map(({ id, texts }, index) => [id, texts.name?.trim() || `Bike ${index + 1}`]));
}

/** Names that people give to what is ridden without assistance. */
const NAMED_WITHOUT_MOTOR = /\b(control|unassisted|no motor|without motor|motor off)\b/i;

/** A bike that never has a motor to switch on, by what is said of its motor, else by its name: all its runs are control runs. */
export function hasNoMotor(bike: DayBike, system: System): boolean {
  if (!bike.texts.motor?.trim()) return NAMED_WITHOUT_MOTOR.test(bike.texts.name ?? '');
  const input = inputOf('bike', 'motor') as DayInput;
  const parsed = readInput(input, bike.texts.motor ?? '', system);
  return parsed.ok && (parsed.si === null || parsed.si === 0);
}

/** Reads a whole document. Never throws. */
export function readDay(document: DayDocument): DayReading {
  const reader = new Reader(document.system);
  const { problems } = reader;
  const defaultsUsed: { name: string; value: number }[] = [];
  const said = (name: string): number | undefined => reader.number('setup', 'setup', document.setup, name);
  /** Value of the set-up, or its default. */
  const setup = (name: string): number => {
    const value = said(name);
    if (value !== undefined) return value;
    const standard = inputOf('setup', name)?.default ?? 0;
    if (!isDoubt(name)) defaultsUsed.push({ name, value: standard });
    return standard;
  };

  for (const name of ['title', 'date', 'place', 'tester']) reader.text('setup', 'setup', document.setup, name);
  const hill = readHill(reader, said);
  const statedRolling = said('rolling');
  const rolling = statedRolling ?? setup('rolling');
  const altitude = setup('altitude');
  const temperature = setup('temperature');
  const headWind = setup('wind');
  const dragArea = setup('drag');
  const efficiency = setup('drive');
  const riderMass = setup('rider');
  const gaugeStep = setup('step');
  const statedPower = said('power');
  const density = airDensity(altitude, temperature);

  const bikes = readBikes(reader, document);
  const runs = readRuns(reader, document, bikes, hill, setup('distance-known'), setup('watch'));
  const powers = runs.flatMap(({ power }) => (power === undefined ? [] : [power]));
  const mean = powers.length > 0 ? powers.reduce((sum, power) => sum + power, 0) / powers.length : STANDARD_POWER;
  const targetPower = statedPower ?? mean;
  if (statedPower === undefined) defaultsUsed.push({ name: 'power', value: targetPower });
  for (const { id, power } of runs) {
    if (power === undefined)
      reader.say(
        id,
        'power',
        `No rider power: ${reader.shown(targetPower, 'power')}, the power compared at, is taken.`,
      );
  }

  const target = hill
    ? readTarget(reader, said, { hill, riderMass, targetPower, headWind, altitude, temperature })
    : undefined;
  const rollingRange = rollingDoubt(rolling, statedRolling !== undefined);
  const doubts: DayDoubts = {
    ...DAY_DOUBTS,
    meterScale: powers.length > 0 ? setup('meter') : Math.max(UNREAD_POWER, setup('meter')),
    meterRepeatability: setup('meter-repeat'),
    stopwatch: setup('watch'),
    riderMass: setup('scale-rider'),
    bikeMass: setup('scale-bike'),
    distance: setup('distance-known'),
    gain: setup('gain-known'),
    dragArea: setup('drag-known'),
    rollingLow: Math.max(0, rollingRange.low),
    rollingHigh: rollingRange.high,
    density: setup('density-known'),
    efficiencyBetween: setup('between'),
    rollingWithSpeed: setup('rolling-by-speed'),
    tyres: setup('tyres-known'),
    headWind: setup('wind-known'),
    scatter: setup('scatter'),
    battery: setup('battery-known'),
    ...(target?.rolling === undefined
      ? {}
      : { targetRolling: Math.max(LEAST_ROLLING, STATED_ROLLING * target.rolling) }),
  };

  const missing = hill ? (runs.length > 0 ? '' : noRun(document)) : noHill(reader);
  const day: TestDay | undefined =
    hill && runs.length > 0
      ? {
          factor: document.comparing,
          hill,
          density,
          headWind,
          dragArea,
          efficiency,
          rolling,
          riderMass,
          targetPower,
          bikes: bikes.map(({ bike }) => bike),
          runs: runs.map(({ run, power }) => ({ ...run, riderPower: power ?? targetPower })),
          gaugeStep,
          ...(target ? { target } : {}),
        }
      : undefined;
  return {
    day,
    missing,
    doubts,
    bikeIds: bikes.map(({ id }) => id),
    bikeNames: bikes.map(({ name }) => name),
    claimedMotors: bikes.map(({ claimed }) => claimed),
    runIds: runs.map(({ id }) => id),
    powerUnread: runs.length > 0 && powers.length === 0,
    cadences: runs.map(({ cadence }) => cadence),
    problems: distinct(problems),
    defaultsUsed,
  };
}

const doubtNames = new Set(setupInputs.filter((input) => input.group === 'instruments').map((input) => input.name));
const isDoubt = (name: string): boolean => doubtNames.has(name) && name !== 'step';

/** A text that is read twice is named once. */
const distinct = (problems: readonly DayProblem[]): DayProblem[] => [
  ...new Map(problems.map((problem) => [`${problem.place} ${problem.name} ${problem.message}`, problem])).values(),
];

function noHill(reader: Reader): string {
  const names = ['distance', 'gain'].filter((name) => reader.hasProblem('setup', name));
  return names.length > 0
    ? 'The hill cannot be used yet: see the sentence beside its distance and height.'
    : 'Fill in how long the hill is and how much height it gains.';
}

const noRun = (document: DayDocument): string =>
  document.runs.length === 0
    ? 'No run yet: add the first one.'
    : 'No run can be used yet. A run needs a time, and a bike whose mass is filled in.';

function readHill(reader: Reader, said: (name: string) => number | undefined): Hill | undefined {
  const distance = said('distance');
  const gain = said('gain');
  if (distance === undefined || gain === undefined) return undefined;
  if (gain >= distance) {
    reader.say('setup', 'gain', tooSteep(reader, distance, gain));
    return undefined;
  }
  return hillFromGain(distance, gain);
}

const tooSteep = (reader: Reader, distance: number, gain: number): string =>
  `A road of ${reader.shown(distance, 'distance')} cannot gain ${reader.shown(gain, 'height')}: the height must be smaller than the distance along the road.`;

interface Measured {
  hill: Hill;
  riderMass: number;
  targetPower: number;
  headWind: number;
  altitude: number;
  temperature: number;
}

/** The other hill: a distance or a height is needed, the grade is the measured one unless stated. */
function readTarget(
  reader: Reader,
  said: (name: string) => number | undefined,
  measured: Measured,
): TargetHill | undefined {
  const distance = said('target-distance');
  const gain = said('target-gain');
  const statedGrade = said('target-grade');
  const rider = said('target-rider');
  const power = said('target-power');
  const rolling = said('target-rolling');
  const wind = said('target-wind');
  const altitude = said('target-altitude');
  const temperature = said('target-temperature');
  const hill = targetHill(reader, measured.hill, distance, gain, statedGrade);
  if (!hill) return undefined;
  return {
    hill,
    riderMass: rider ?? measured.riderMass,
    riderPower: power ?? measured.targetPower,
    headWind: wind ?? measured.headWind,
    density: airDensity(altitude ?? measured.altitude, temperature ?? measured.temperature),
    ...(rolling === undefined ? {} : { rolling }),
  };
}

function targetHill(
  reader: Reader,
  measured: Hill,
  distance: number | undefined,
  gain: number | undefined,
  stated: number | undefined,
): Hill | undefined {
  const grade = stated ?? measured.grade;
  if (distance !== undefined && gain !== undefined) {
    if (gain >= distance) {
      reader.say('setup', 'target-gain', tooSteep(reader, distance, gain));
      return undefined;
    }
    if (stated !== undefined)
      reader.say(
        'setup',
        'target-grade',
        'Distance, height and grade of the other hill are all given: distance and height count.',
      );
    return hillFromGain(distance, gain);
  }
  if (distance !== undefined) return hillFromGrade(distance, grade);
  if (gain === undefined) return undefined;
  if (gain === 0) {
    reader.say('setup', 'target-gain', 'A hill that gains no height needs its distance: fill it in beside.');
    return undefined;
  }
  if (!(grade > 0)) {
    reader.say(
      'setup',
      'target-grade',
      `A hill that gains height needs a grade above zero, not ${reader.shown(grade, 'grade')}.`,
    );
    return undefined;
  }
  return hillFromGrade(distanceForGain(gain, grade), grade);
}

interface ReadBike {
  id: string;
  name: string;
  bike: TestBike;
  claimed: number | null | undefined;
}

function readBikes(reader: Reader, document: DayDocument): ReadBike[] {
  const names = bikeNamesOf(document);
  const tyreSets: string[] = [];
  const bikes: ReadBike[] = [];
  for (const { id, texts } of document.bikes) {
    const mass = reader.number('bike', id, texts, 'bike');
    const limit = reader.value('bike', id, texts, 'limit');
    const claimed = reader.value('bike', id, texts, 'motor');
    const support = reader.number('bike', id, texts, 'support');
    const battery = reader.number('bike', id, texts, 'battery');
    reader.text('bike', id, texts, 'name');
    const words = reader.text('bike', id, texts, 'tyres')?.toLowerCase().replace(/\s+/g, ' ') ?? '';
    // Where tyres are what is compared, an entry that says nothing about them still has its own.
    const tyres = words === '' && document.comparing === 'tyres' ? id : words;
    if (!tyreSets.includes(tyres)) tyreSets.push(tyres);
    if (mass === undefined) {
      if (reader.hasProblem(id, 'bike')) reader.leaveOut(id, 'bike');
      else if (document.runs.some((run) => run.bike === id))
        reader.say(id, 'bike', 'Its mass is missing, so its runs cannot count yet.', true);
      continue;
    }
    bikes.push({
      id,
      name: names.get(id) ?? '',
      claimed: claimed === 0 ? null : claimed,
      bike: {
        mass,
        assistLimit: limit === undefined ? (inputOf('bike', 'limit')?.default ?? null) : limit,
        tyres: tyreSets.indexOf(tyres),
        ...(support === undefined ? {} : { support }),
        ...(battery === undefined ? {} : { usableEnergy: battery }),
      },
    });
  }
  return bikes;
}

interface ReadRun {
  id: string;
  /** W; undefined where none was typed */
  power: number | undefined;
  cadence: number | undefined;
  run: Omit<TestRun, 'riderPower'>;
}

function readRuns(
  reader: Reader,
  document: DayDocument,
  bikes: readonly ReadBike[],
  hill: Hill | undefined,
  distanceKnown: number,
  watch: number,
): ReadRun[] {
  const index = new Map(bikes.map(({ id }, i) => [id, i]));
  const exists = new Set(document.bikes.map(({ id }) => id));
  const runs: ReadRun[] = [];
  for (const run of document.runs) {
    const { id, texts } = run;
    const number = (name: string): number | undefined => reader.number('run', id, texts, name);
    const time = number('time');
    const power = number('power');
    const cadence = number('cadence');
    const riderMass = number('rider');
    const headWind = number('wind');
    const speed = number('speed');
    reader.text('run', id, texts, 'note');
    const gauge = readGauge(reader, run);
    if (time !== undefined && speed !== undefined && hill) {
      const message = speedProblem(
        texts,
        { time, speed, distance: hill.distance, distanceKnown, watch },
        reader.system,
      );
      if (message) reader.say(id, 'speed', message);
    }
    if (!run.counted) continue;
    const bike = index.get(run.bike);
    if (time === undefined) {
      if (reader.hasProblem(id, 'time')) reader.leaveOut(id, 'time');
      else if (Object.values(texts).some((typed) => typed.trim() !== ''))
        reader.say(id, 'time', 'No time yet, so this run does not count.', true);
      continue;
    }
    if (reader.hasProblem(id, 'power')) {
      reader.leaveOut(id, 'power');
      continue;
    }
    if (!exists.has(run.bike)) {
      reader.say(id, 'bike', 'Choose the bike of this run; until then it does not count.', true);
      continue;
    }
    if (bike === undefined) continue;
    runs.push({
      id,
      power,
      cadence,
      run: {
        bike,
        assisted: run.assisted && bikes[bike]?.claimed !== null,
        time,
        ...(riderMass === undefined ? {} : { riderMass }),
        ...(headWind === undefined ? {} : { headWind }),
        ...gauge,
      },
    });
  }
  return runs;
}

/** Both readings of a gauge, when the second is not above the first. */
function readGauge(reader: Reader, { id, texts }: DayRun): Pick<TestRun, 'gaugeBefore' | 'gaugeAfter'> {
  const before = reader.number('run', id, texts, 'start');
  const after = reader.number('run', id, texts, 'end');
  if (before === undefined || after === undefined) return {};
  if (after > before) {
    reader.say(
      id,
      'end',
      `The gauge went up from ${reader.shown(before, 'percent')} to ${reader.shown(after, 'percent')}: the two readings are left out. Were they exchanged?`,
    );
    return {};
  }
  return { gaugeBefore: before, gaugeAfter: after };
}
