import { describe, expect, test } from 'vitest';
import type { DayDocument, Texts } from '../../calculators/day/document.ts';
import { emptyDay, setText } from '../../calculators/day/editing.ts';
import { exampleDay } from '../../calculators/day/example.ts';
import { inputsOf } from '../../calculators/day/inputs.ts';
import { type DayReading, readDay } from '../../calculators/day/read.ts';
import { random } from '../random.ts';
import { randomDay } from './documents.ts';

/** A hill of one mile and 550 ft, a bike of 37 lb, and one run. */
const oneRun = (texts: Texts, setup: Texts = {}, bike: Texts = {}): DayDocument => ({
  ...emptyDay('us'),
  setup: { distance: '1', gain: '550', ...setup },
  bikes: [{ id: 'a', texts: { name: 'A', bike: '37', ...bike } }],
  runs: [{ id: 'r', bike: 'a', assisted: true, counted: true, texts: { time: '7:22', power: '200', ...texts } }],
});

const messages = (reading: DayReading): string[] => reading.problems.map(({ message }) => message);

describe('reading a day', () => {
  test('makes SI of what was typed, in the units of the day or in those typed with it', () => {
    const { day, problems } = readDay(
      oneRun(
        { start: '98', end: '91 %', wind: '1 m/s' },
        { rider: '80 kg', temperature: '59' },
        { battery: '0.5 kWh' },
      ),
    );
    expect(problems).toEqual([]);
    // international mile, foot and pound; 59 °F is 15 °C
    expect(day?.hill.distance).toBe(1609.344);
    expect(day?.hill.gain).toBeCloseTo(550 * 0.3048, 10);
    expect(day?.riderMass).toBe(80);
    expect(day?.bikes).toEqual([
      { mass: expect.closeTo(37 * 0.45359237, 10), assistLimit: 25 / 3.6, tyres: 0, usableEnergy: 1_800_000 },
    ]);
    expect(day?.runs).toEqual([
      { bike: 0, assisted: true, time: 442, riderPower: 200, headWind: 1, gaugeBefore: 0.98, gaugeAfter: 0.91 },
    ]);
    // 1.11 to 1.23 kg/m³ from 500 m down to the sea at 15 °C
    expect(day?.density).toBeGreaterThan(1.14);
    expect(day?.density).toBeLessThan(1.17);
  });

  test('one mile in 7:05 is 8.47 mph, not 10', () => {
    const said = messages(readDay(oneRun({ time: '7:05', speed: '10' })));
    expect(said).toEqual([
      '1\u202fmi in 7:05 is 8.47\u202fmph, not 10\u202fmph: time and mean speed cannot both be true. The time counts; check both.',
    ]);
    // 1 mi / 425 s = 8.471 mph: what rounds to it is true, in any unit, and so is what the distance (1 %) and the watch leave open
    for (const speed of ['8.47', '8.5', '8', '8.4', '13.6 km/h', '3.79 m/s', '13,6 km/h'])
      expect(messages(readDay(oneRun({ time: '7:05', speed }))), speed).toEqual([]);
    for (const speed of ['8.3', '8.7', '10.0', '13.2 km/h', '3.6 m/s', '7', '9.1'])
      expect(messages(readDay(oneRun({ time: '7:05', speed }))), speed).toHaveLength(1);
    // with a surveyed distance and a good watch less is left open: 8.40 mph differs by 0.8 %
    const sure = { 'distance-known': '0.1', watch: '0.1' };
    expect(messages(readDay(oneRun({ time: '7:05', speed: '8.40' }, sure)))).toHaveLength(1);
    expect(messages(readDay(oneRun({ time: '7:05', speed: '8.47' }, sure)))).toEqual([]);
  });

  test('a run without a power takes the target, one with nonsense is left out, and both say so', () => {
    const missing = readDay(oneRun({ power: '' }, { power: '210' }));
    expect(missing.day?.runs[0]?.riderPower).toBe(210);
    expect(messages(missing)[0]).toContain('No rider power: 210\u202fW');
    const nonsense = readDay(oneRun({ power: 'lots' }));
    expect(nonsense.day).toBeUndefined();
    expect(nonsense.problems).toMatchObject([{ place: 'r', name: 'power', leavesOut: true }]);
    expect(nonsense.missing).toContain('No run can be used yet');
  });

  test('without a target the comparison is made at the mean power of the runs', () => {
    const document = oneRun({ power: '190' });
    const two = {
      ...document,
      runs: [
        ...document.runs,
        ...document.runs.map((run) => ({ ...run, id: 's', texts: { time: '7:00', power: '200' } })),
      ],
    };
    const reading = readDay(two);
    expect(reading.day?.targetPower).toBe(195);
    expect(reading.defaultsUsed).toContainEqual({ name: 'power', value: 195 });
  });

  test('says what is missing, in order', () => {
    expect(readDay(emptyDay()).missing).toBe('Fill in how long the hill is and how much height it gains.');
    expect(readDay({ ...oneRun({}), runs: [] }).missing).toBe('No run yet: add the first one.');
    const steep = readDay(oneRun({}, { gain: '6000' }));
    expect(steep.day).toBeUndefined();
    expect(messages(steep)[0]).toContain('cannot gain 6\u202f000\u202fft');
    const unweighed = readDay(oneRun({}, {}, { bike: '' }));
    expect(unweighed.problems).toMatchObject([{ place: 'a', name: 'bike', leavesOut: true }]);
    const untimed = readDay(oneRun({ time: '' }));
    expect(untimed.problems).toMatchObject([{ place: 'r', name: 'time', leavesOut: true }]);
    const nobodys = readDay({ ...oneRun({}), bikes: [] });
    expect(nobodys.problems).toMatchObject([{ place: 'r', name: 'bike', leavesOut: true }]);
  });

  test('maps what it kept to the ids of the document', () => {
    const document = setText(setText(exampleDay(), 'light', 'bike', 'heavy'), 'run-4', 'time', 'fast');
    const reading = readDay({
      ...document,
      runs: document.runs.map((run) => (run.id === 'run-6' ? { ...run, counted: false } : run)),
    });
    expect(reading.bikeIds).toEqual(['control', 'mid', 'full']);
    expect(reading.runIds).toEqual(['run-1', 'run-3', 'run-5', 'run-9', 'run-10', 'run-11']);
    expect(reading.day?.runs.map(({ bike }) => reading.bikeIds[bike])).toEqual([
      'control',
      'mid',
      'full',
      'mid',
      'full',
      'control',
    ]);
    expect(reading.cadences).toHaveLength(6);
    expect(reading.claimedMotors).toEqual([null, 450, 600]);
  });

  test('a bike without a motor has control runs only', () => {
    expect(readDay(oneRun({}, {}, { motor: 'none' })).day?.runs[0]?.assisted).toBe(false);
    expect(readDay(oneRun({}, {}, { motor: '0' })).day?.runs[0]?.assisted).toBe(false);
    expect(readDay(oneRun({}, {}, { motor: '' })).day?.runs[0]?.assisted).toBe(true);
  });

  test('the same words are the same tyres', () => {
    const bikes = ['29 x 2.4', ' 29  X 2.4 ', '', '27.5', ''].map((tyres, i) => ({
      id: `${i}`,
      texts: { bike: '20', tyres },
    }));
    const document: DayDocument = { ...oneRun({}), bikes, runs: oneRun({}).runs.map((run) => ({ ...run, bike: '0' })) };
    expect(readDay(document).day?.bikes.map(({ tyres }) => tyres)).toEqual([0, 0, 1, 2, 1]);
    // where tyres are compared, those that nobody named are not the same
    const compared = readDay({ ...document, comparing: 'tyres' });
    expect(compared.day?.bikes.map(({ tyres }) => tyres)).toEqual([0, 0, 1, 2, 3]);
  });

  test('a gauge that went up is left out', () => {
    const reading = readDay(oneRun({ start: '91', end: '98' }));
    expect(reading.day?.runs[0]).not.toHaveProperty('gaugeBefore');
    expect(messages(reading)[0]).toContain('went up from 91\u202f% to 98\u202f%');
  });

  test('the other hill: a height at the measured grade, or a distance, or both', () => {
    const target = (setup: Texts) => readDay(oneRun({}, setup)).day?.target;
    expect(target({})).toBeUndefined();
    const measured = readDay(oneRun({})).day;
    expect(target({ 'target-gain': '2000' })?.hill.grade).toBeCloseTo(measured?.hill.grade ?? 0, 12);
    expect(target({ 'target-gain': '2000', 'target-grade': '6' })?.hill.grade).toBeCloseTo(0.06, 12);
    expect(target({ 'target-distance': '2' })?.hill.gain).toBeCloseTo(2 * 550 * 0.3048, 9);
    expect(target({ 'target-distance': '2', 'target-gain': '500' })?.hill.gain).toBeCloseTo(152.4, 10);
    expect(target({ 'target-gain': '2000', 'target-rider': '150', 'target-rolling': '0.01' })).toMatchObject({
      riderMass: expect.closeTo(68.0388555, 7),
      riderPower: 200,
      rolling: 0.01,
    });
    const flat = readDay(oneRun({}, { 'target-gain': '0' }));
    expect(messages(flat)[0]).toContain('needs its distance');
    expect(flat.day).toBeDefined();
  });

  test('doubts as typed; a stated surface is known to 30 %', () => {
    const { doubts } = readDay(oneRun({}, { meter: '1', 'scale-bike': '0.1 kg', rolling: '0.02', scatter: '2' }));
    expect(doubts).toMatchObject({ meterScale: 0.01, bikeMass: 0.1, scatter: 0.02 });
    expect([doubts.rollingLow, doubts.rollingHigh]).toEqual([expect.closeTo(0.014, 12), expect.closeTo(0.026, 12)]);
    expect(readDay(oneRun({})).doubts).toMatchObject({ rollingLow: 0.015, rollingHigh: 0.035, meterScale: 0.02 });
  });

  test('never throws and never gives a number without end, whatever was typed', () => {
    const finite = (value: unknown): boolean =>
      typeof value === 'number'
        ? Number.isFinite(value)
        : typeof value !== 'object' || value === null || Object.values(value).every(finite);
    for (let seed = 0; seed < 1500; seed++) {
      const next = random(seed);
      const made = randomDay(next);
      // most random hills are no hills
      const document = next.chance(0.7) ? { ...made, setup: { ...made.setup, distance: '1.5', gain: '150' } } : made;
      const reading = readDay(document);
      expect(finite(reading.day), `seed ${seed}`).toBe(true);
      expect(finite(reading.doubts)).toBe(true);
      expect(reading.day === undefined).toBe(reading.missing !== '');
      for (const { bike } of reading.day?.runs ?? []) expect(reading.day?.bikes[bike]).toBeDefined();
      const places = new Set(['setup', ...document.bikes.map(({ id }) => id), ...document.runs.map(({ id }) => id)]);
      for (const { place, message } of reading.problems) {
        expect(places.has(place)).toBe(true);
        // but for what was typed itself, which stands in quotation marks
        expect(message.replace(/“.*?”/gs, '')).not.toMatch(/NaN|Infinity|undefined/);
      }
    }
  });
});

describe('the inputs of a day', () => {
  test('have names that are public, one each, and labels', () => {
    for (const inputs of Object.values(inputsOf)) {
      expect(new Set(inputs.map(({ name }) => name)).size).toBe(inputs.length);
      for (const { name, label, min, max } of inputs) {
        expect(name).toMatch(/^[a-z]+(-[a-z]+)*$/);
        expect(label.length).toBeGreaterThan(2);
        expect(max).toBeGreaterThan(min);
      }
    }
  });
});
