import type { Kind } from '../quantities/index.ts';

/** A result of a test day in the public vocabulary of `<output>` elements. */
export interface DayResultName {
  name: string;
  kind: Kind;
  of: 'bike' | 'pair' | 'tyres' | 'day';
  meaning: string;
}

const bike = (name: string, kind: Kind, meaning: string): DayResultName => ({ name, kind, of: 'bike', meaning });
const pair = (name: string, kind: Kind, meaning: string): DayResultName => ({ name, kind, of: 'pair', meaning });
const day = (name: string, kind: Kind, meaning: string): DayResultName => ({ name, kind, of: 'day', meaning });

/** Every result of a test day. `/reference/links/` prints it, and a test holds the outcome against it. */
export const dayResultNames: readonly DayResultName[] = [
  bike('runs', 'count', 'Assisted runs that were counted.'),
  bike('time', 'duration', 'Time at the target power, with the common rider and the bike’s own mass.'),
  bike('speed', 'speed', 'Speed at the target power.'),
  bike('motor-power', 'power', 'Mean output of the motor at the crank on this hill.'),
  bike('correction', 'seconds', 'What bringing the runs to the target power added to their mean time.'),
  bike('battery-energy', 'energy', 'Energy drawn for one climb, by the gauge.'),
  bike('implied-efficiency', 'percent', 'The motor’s work over that energy.'),
  bike('target-time', 'duration', 'Time on the other hill, by the model.'),
  bike('target-time-proportional', 'duration', 'Time at the target power times the ratio of heights.'),
  pair(
    'gap-time',
    'duration',
    'Time at the target power less that of the bike in `data-against`; its range is that of this pair alone.',
  ),
  pair('gap-power', 'power', 'Motor power less that of the bike in `data-against`.'),
  pair(
    'runs-needed',
    'count',
    'Further runs on each of the two that would make the difference in time real; 0 when it is.',
  ),
  {
    name: 'rolling',
    kind: 'ratio',
    of: 'tyres',
    meaning: 'Effective C_rr of the hill. Where tyres differ, `data-bike` is the first bike on them.',
  },
  day('drag', 'area', 'Drag area, where the control runs tell it.'),
  day('scatter', 'percent', 'Standard deviation of one run, as a share of total power.'),
  day('drift', 'percent', 'Change of total power from one run to the next.'),
];

/** Kind of a result by its name. */
export const dayResultKind = (name: string): Kind => dayResultNames.find((one) => one.name === name)?.kind ?? 'ratio';
