import { formatQuantity } from '../quantities/index.ts';
import type { BikeDetail } from '../scenario/comparison.ts';
import {
  bikeName,
  mainCause,
  NOBODY_PEDALS,
  numberOf,
  type Remark,
  type Result,
  resultOf,
  type Scenario,
  waitsForPedals,
} from '../scenario/index.ts';
import { assistLimitRemark, brakingRemark, lasting, limitRemarks, placeOf } from '../scenario/limit-remarks.ts';
import type { YourHillOutcome } from './outcome.ts';

/** What the reader should know about the answer, in sentences. */
export function yourHillRemarks(scenario: Scenario, outcome: YourHillOutcome): Remark[] {
  const { bikes, profile } = outcome;
  return [
    ...(bikes.some(({ climb }) => waitsForPedals(climb)) ? [{ tone: 'wrong', text: NOBODY_PEDALS } as const] : []),
    ...doubtRemark(bikes),
    ...biasRemark(scenario, outcome),
    ...bikes.flatMap((detail, bike) => bikeRemarks(scenario, detail, bikeName(scenario, bike))),
    ...tiringRemark(scenario, bikes),
    ...brakingRemark(
      scenario,
      bikes.map(({ limits }) => limits),
    ),
    {
      tone: 'plain',
      text: `The hill is ${profile.distance.length === 2 ? 'one straight piece' : `${profile.distance.length - 1} straight pieces`}: within a piece the road may be steeper and flatter than that.`,
    },
  ];
}

const slowestOf = (bikes: readonly BikeDetail[]): BikeDetail | undefined =>
  bikes.reduce<BikeDetail | undefined>(
    (worst, one) => (!worst || one.time.value > worst.time.value ? one : worst),
    undefined,
  );

function doubtRemark(bikes: readonly BikeDetail[]): Remark[] {
  const slowest = slowestOf(bikes);
  const cause = slowest && mainCause(slowest.time);
  if (!cause) return [];
  const shared = bikes.length > 1 ? ' All bikes share it, so the gaps are surer than the times.' : '';
  return [{ tone: 'plain', text: `Most of the doubt is ${cause.cause}.${shared}` }];
}

/** What the mean grade would have said, of the bike for which it is furthest off. */
function biasRemark(scenario: Scenario, outcome: YourHillOutcome): Remark[] {
  const of = (name: string, bike: number): number => resultOf(outcome, name, bike).si ?? Number.NaN;
  const biases = outcome.bikes.map((_, i) => of('time-bias', i + 1));
  const most = biases.reduce(
    (worst, bias, i) => (Math.abs(bias) > Math.abs(biases[worst] ?? 0) || Number.isNaN(biases[worst]) ? i : worst),
    0,
  );
  const bias = biases[most] ?? Number.NaN;
  // one piece is its own mean
  if (!(Math.abs(bias) >= 0.5)) return [];
  const grade = formatQuantity(resultOf(outcome, 'grade').si ?? 0, 'grade', scenario.system);
  const time = formatQuantity(of('time-mean-grade', most + 1), 'duration', scenario.system);
  const who = outcome.bikes.length > 1 ? ` for ${bikeName(scenario, most)}` : '';
  const why =
    bias < 0
      ? ' That is unusual: a limit that binds elsewhere on the way, a wind or a faster start makes up for the uneven grade.'
      : (resultOf(outcome, 'gain').si ?? 0) > 0
        ? ' Steep parts cost more time than gentle ones win back.'
        : '';
  return [
    {
      tone: 'plain',
      text: `At its mean grade of ${grade} the model would say ${time}${who}: ${lasting(Math.abs(bias))} too ${bias > 0 ? 'little' : 'much'}.${why}`,
    },
  ];
}

/** What holds a bike back, where, and for how much. */
function bikeRemarks(scenario: Scenario, { climb, ride, limits, limited }: BikeDetail, name: string): Remark[] {
  if (!ride) return [];
  const way = { climb, ride, limits };
  return [...(limited ? assistLimitRemark(scenario, way, name) : []), ...limitRemarks(scenario, way, name)];
}

/** Where the rider has nothing left above the power that lasts: of the bike that takes longest, because it is at the same time on all. */
function tiringRemark(scenario: Scenario, bikes: readonly BikeDetail[]): Remark[] {
  const tired = bikes.filter(({ limits }) => limits.some(({ limit }) => limit === 'endurance'));
  const slowest = slowestOf(tired);
  const limit = slowest?.limits.find((one) => one.limit === 'endurance');
  if (!slowest || !limit) return [];
  const text = (si: number, kind: Result['kind']): string => formatQuantity(si, kind, scenario.system, { trim: true });
  const who = bikes.length > 1 ? ` on ${bikeName(scenario, bikes.indexOf(slowest))}` : '';
  return [
    {
      tone: 'caution',
      text: `You hold ${text(slowest.climb.riderPower, 'power')} for about ${lasting(limit.from.time)}${who}, up to ${placeOf(slowest.climb.hill, limit.from.distance, scenario)}. From there the answer goes on at the ${text(numberOf(scenario, 'endurance'), 'power')} that you hold for long, which costs ${lasting(limit.lost)}. Such an effort is hard: if you are not used to it, ask a doctor first.`,
    },
  ];
}
