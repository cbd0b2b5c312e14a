import { plainText } from '../scenario/editing.ts';
import { MAX_BIKES, MAX_CONTROLS } from '../scenario/scenario.ts';
import type { DayDocument, Texts } from './document.ts';
import { inputOf, type Place, readInput } from './inputs.ts';
import type { DayOutcome } from './outcome.ts';
import { rankingOf } from './verdicts.ts';

/** What the set-up and the calculator of bigger hills call by the same name. */
const SETUP =
  'distance gain altitude temperature wind rolling drag drive rider target-distance target-gain target-grade target-altitude target-temperature target-wind target-rolling target-rider target-power'.split(
    ' ',
  );

const encode = (text: string): string =>
  encodeURIComponent(text).replace(/%2C/g, ',').replace(/%3A/g, ':').replace(/%20/g, '+');

/** Query that opens the calculator of bigger hills with what was measured: times at the target power, and the control runs. Empty while there is nothing to carry. */
export function biggerHillQuery(document: DayDocument, outcome: DayOutcome): string {
  const { about, reading } = outcome;
  const bikes = rankingOf(outcome)
    .slice(0, MAX_BIKES)
    .sort((a, b) => a - b);
  if (!about || bikes.length === 0) return '';
  const { day, reduction } = about;
  const said = (place: Place, texts: Texts, name: string): string => {
    const input = inputOf(place, name);
    const parsed = input && readInput(input, texts[name] ?? '', document.system);
    return parsed?.ok ? parsed.canonical : '';
  };
  const setup = SETUP.flatMap((name): [string, string][] => {
    const text = said('setup', document.setup, name);
    return text === '' ? [] : [[name, text]];
  });
  const texts = bikes.map((i) => document.bikes.find(({ id }) => id === reading.bikeIds[i])?.texts ?? {});
  const perBike = (name: string): [string, string][] => {
    const items = texts.map((own) => said('bike', own, name).replace(/[\\,]/g, '\\$&'));
    return items.every((item) => item === '') ? [] : [[name, items.join(',')]];
  };
  const controls = day.runs.filter(({ assisted }) => !assisted).slice(0, MAX_CONTROLS);
  const perControl: [string, string][] =
    controls.length === 0
      ? [['control-time', 'none']]
      : [
          ['control-time', controls.map(({ time }) => plainText(time, 'duration')).join(',')],
          ['control-power', controls.map(({ riderPower }) => plainText(riderPower, 'power')).join(',')],
          [
            'control-bike',
            controls.map(({ bike }) => plainText(day.bikes[bike]?.mass ?? Number.NaN, 'mass')).join(','),
          ],
          ...(controls.some(({ riderMass }) => riderMass !== undefined)
            ? ([
                [
                  'control-rider',
                  controls.map(({ riderMass }) => plainText(riderMass ?? day.riderMass, 'mass')).join(','),
                ],
              ] as [string, string][])
            : []),
        ];
  const pairs: [string, string][] = [
    ...setup,
    ['power', plainText(day.targetPower, 'power')],
    // a name that cannot be read is one by number
    ['name', texts.map((own, k) => said('bike', own, 'name').replace(/[\\,]/g, '\\$&') || `Bike ${k + 1}`).join(',')],
    ...perBike('bike'),
    ...perBike('limit'),
    ...perBike('battery'),
    [
      'time',
      bikes
        .map((i) => plainText(Math.round(10 * (reduction.bikes[i]?.time?.value ?? Number.NaN)) / 10, 'duration'))
        .join(','),
    ],
    ...perControl,
    ...(document.system === 'us' ? ([['units', 'us']] as [string, string][]) : []),
  ];
  return `?${pairs.map(([name, text]) => `${name}=${encode(text)}`).join('&')}`;
}
