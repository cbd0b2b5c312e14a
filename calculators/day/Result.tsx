import { useState } from 'preact/hooks';
import { addressUnderBase } from '../parts/address.ts';
import { BarChart } from '../parts/BarChart.tsx';
import { ResultOutput, rangeText, resultText } from '../parts/Output.tsx';
import { formatNumber, formatQuantity, formatRange, type System } from '../quantities/index.ts';
import { type Result as OneResult, type Remark, resultOf } from '../scenario/outcome.ts';
import { type Cause, rankedCauses } from './causes.ts';
import { checksOf } from './checks.ts';
import type { DayDocument } from './document.ts';
import { biggerHillQuery } from './onward.ts';
import { type DayOutcome, pairResult } from './outcome.ts';
import { counted, gapTexts } from './phrases.ts';
import { useSimulation } from './sampling.ts';
import { headlineOf, hillText, publishedSentence } from './sentences.ts';
import { type RankedPair, rankedPairs, rankingOf } from './verdicts.ts';
import { capital } from './words.ts';

interface Props {
  document: DayDocument;
  outcome: DayOutcome;
}

/**
 * What a test day answers: the headline, what is odd, charts, tables, verdicts, doubts, and the sentence to print. `shared` by a link, it
 * speaks to a reader first; `embedded` in another page too, and it leaves out what only the tester needs.
 */
export function Result({
  document,
  outcome,
  embedded = false,
  shared = embedded,
}: Props & { embedded?: boolean; shared?: boolean }) {
  const { about, reading } = outcome;
  const checks = checksOf(document, outcome);
  if (!about)
    return (
      <section class="day-result" aria-label="Result">
        <h2>Result</h2>
        <p>{reading.missing}</p>
        <Checks checks={checks} />
      </section>
    );
  const ranking = rankingOf(outcome);
  return (
    <section class="day-result" aria-label="Result">
      {shared && <ForReader document={document} outcome={outcome} apart={embedded} />}
      <Head document={document} outcome={outcome} />
      <Checks checks={checks} />
      {ranking.length > 0 && (
        <>
          <Charts document={document} outcome={outcome} ranking={ranking} />
          <BikeResults document={document} outcome={outcome} ranking={ranking} />
        </>
      )}
      <Pairs document={document} outcome={outcome} />
      <Doubts outcome={outcome} />
      <Facts document={document} outcome={outcome} />
      {!embedded && (
        <>
          <Published document={document} outcome={outcome} />
          <Onward document={document} outcome={outcome} />
        </>
      )}
    </section>
  );
}

/** What a reader of somebody else's day is asked first; from a frame it opens in a window of its own. */
function ForReader({ document, outcome, apart }: Props & { apart: boolean }) {
  const query = biggerHillQuery(document, outcome);
  if (query === '') return null;
  return (
    <p class="for-reader">
      These times are the tester’s, on the tester’s hill. What would the bikes do for you?{' '}
      <a
        class="main"
        href={addressUnderBase(`/calculators/bigger-hill/${query}`)}
        {...(apart ? { target: '_blank', rel: 'noopener' } : {})}
      >
        My hill, my weight
      </a>
    </p>
  );
}

/** The answer itself. */
function Head({ document, outcome }: Props) {
  const headline = headlineOf(document, outcome);
  return (
    <div class="day-answer">
      <h2>Result</h2>
      {headline ? (
        <>
          <p class="headline-of">{headline.of}</p>
          <p class="headline">
            <span class="big">{headline.value}</span>{' '}
            <span class="range">
              95{'\u202f'}% range {headline.range}
            </span>
          </p>
          <p>{headline.words}</p>
        </>
      ) : (
        <p>Nothing to compare yet: add a run with the motor on.</p>
      )}
    </div>
  );
}

/** Sentences that always show; the rest can be unfolded. */
const SHOWN = 6;

function Checks({ checks }: { checks: readonly Remark[] }) {
  const list = (some: readonly Remark[]) => (
    <ul class="remarks">
      {some.map(({ tone, text }, i) => (
        <li class={tone} key={`${i} ${text}`}>
          {text}
        </li>
      ))}
    </ul>
  );
  if (checks.length === 0) return null;
  return (
    <div class="day-checks">
      <h3>What to look at</h3>
      {list(checks.slice(0, SHOWN))}
      {checks.length > SHOWN && (
        <details class="fold">
          <summary>{counted(checks.length - SHOWN, 'more sentence')}</summary>
          {list(checks.slice(SHOWN))}
        </details>
      )}
    </div>
  );
}

interface RankedProps extends Props {
  /** indices of the bikes of the day that have a time, fastest first */
  ranking: readonly number[];
}

/** A result of bike `i` of the day. */
const ofBike = (outcome: DayOutcome, name: string, i: number): OneResult => resultOf(outcome, name, outcome.numbers[i]);

function Charts({ document: { system }, outcome, ranking }: RankedProps) {
  const names = outcome.reading.bikeNames;
  const bars = (result: string) =>
    ranking.map((i) => {
      const own = ofBike(outcome, result, i);
      const range = rangeText(own, system);
      const text = `${resultText(own, system)}${range && `, ${range}`}`;
      return { label: names[i] ?? '', text, value: own.si ?? 0, low: own.low, high: own.high };
    });
  const said = (result: string): string =>
    bars(result)
      .map(({ label, text }) => `${label} ${text}`)
      .join('; ');
  const at = formatQuantity(outcome.about?.day.targetPower, 'power', system, { trim: true });
  return (
    <div class="day-charts">
      <figure>
        <figcaption>
          Time at {at} of rider power, with its 95{'\u202f'}% range
        </figcaption>
        <BarChart description={`Times: ${said('time')}.`} bars={bars('time')} series />
      </figure>
      <figure>
        <figcaption>What each motor gave on average at the crank</figcaption>
        <BarChart description={`Motor power: ${said('motor-power')}.`} bars={bars('motor-power')} series />
      </figure>
    </div>
  );
}

/** Name of the result, what people call it, and whether its range is shown. */
type Row = readonly [name: string, label: string, range?: boolean];

/** Results of the bikes, a column each. It scrolls sideways by itself when it must, so it can be reached by keyboard. */
function BikeResults({ document: { system }, outcome, ranking }: RankedProps) {
  const target = outcome.about?.day.target;
  const unranked = outcome.numbers.flatMap((number, i) =>
    !ranking.includes(i) && outcome.results.some(({ name, bike }) => name === 'time' && bike === number) ? [i] : [],
  );
  const bikes = [...ranking, ...unranked];
  const hasEnergy = bikes.some((i) => ofBike(outcome, 'battery-energy', i).si !== undefined);
  const groups: { words: string; rows: readonly Row[] }[] = [
    {
      words: '',
      rows: [
        ['time', 'Time', true],
        ['motor-power', 'Motor', true],
        ['speed', 'Speed', true],
        ['correction', 'Brought to target power by'],
        ['runs', 'Runs'],
      ],
    },
  ];
  if (hasEnergy)
    groups.push({
      words: 'Battery, for one climb',
      rows: [
        ['battery-energy', 'From the battery', true],
        ['implied-efficiency', 'Motor’s work over it', true],
      ],
    });
  if (target)
    groups.push({
      words: `On another hill: ${hillText(target.hill, system)}, at ${formatQuantity(target.riderPower, 'power', system, { trim: true })}`,
      rows: [
        ['target-time', 'Time by the model', true],
        ['target-time-proportional', 'Time by multiplying height'],
      ],
    });
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section class="scrolls" aria-label="Bike by bike" tabIndex={0}>
      <table class="bikes">
        <caption>Bike by bike</caption>
        <thead>
          <tr>
            <td />
            {bikes.map((i) => (
              <th scope="col" key={i}>
                {outcome.reading.bikeNames[i]}
              </th>
            ))}
          </tr>
        </thead>
        {groups.map(({ words, rows }) => (
          <tbody key={words}>
            {words && (
              <tr>
                <th scope="rowgroup" class="group-head" colSpan={bikes.length + 1}>
                  {words}
                </th>
              </tr>
            )}
            {rows.map(([name, label, range]) => (
              <tr key={name}>
                <th scope="row">{label}</th>
                {bikes.map((i) => (
                  <td key={i}>
                    <ResultOutput result={ofBike(outcome, name, i)} system={system} range={range} />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        ))}
      </table>
    </section>
  );
}

/** So many pairs are shown at once; of more, neighbours in the ranking first. */
const MOST_PAIRS = 6;

/** Every two bikes: how far apart, and whether that is shown. */
function Pairs({ document, outcome }: Props) {
  const pairs = rankedPairs(outcome);
  if (pairs.length === 0) return null;
  const near = pairs.length <= MOST_PAIRS ? pairs : pairs.filter(({ neighbours }) => neighbours);
  const far = pairs.filter((pair) => !near.includes(pair));
  return (
    <div class="day-pairs">
      <h3>Which differences are real</h3>
      {pairs.length > 1 && (
        <p class="note">
          All {pairs.length} pairs are judged together (by Tukey’s width), because among many pairs one seems apart by
          chance alone. The range beside each is that of this pair alone.
        </p>
      )}
      <PairList pairs={near} document={document} outcome={outcome} />
      {far.length > 0 && (
        <details class="fold">
          <summary>The other {counted(far.length, 'pair')}</summary>
          <PairList pairs={far} document={document} outcome={outcome} />
        </details>
      )}
    </div>
  );
}

function PairList({ pairs, document: { system, comparing }, outcome }: Props & { pairs: readonly RankedPair[] }) {
  const { numbers, reading } = outcome;
  return (
    <ul class="pairs">
      {pairs.map(({ pair, faster, slower, forward, verdict }) => {
        const result = (name: string): OneResult | undefined =>
          pairResult(outcome, name, numbers[pair.second] ?? 0, numbers[pair.first] ?? 0);
        const [gap, power, needed] = [result('gap-time'), result('gap-power'), result('runs-needed')];
        if (!gap || !power || !needed) return null;
        const sign = forward ? 1 : -1;
        const apart = turned(gap, sign, gapTexts);
        const watts = turned(power, -sign, (value, low, high) => ({
          value: formatQuantity(value, 'power', system, { sign: true }),
          range: formatRange(low, high, 'power', system),
        }));
        return (
          <li key={`${pair.first} ${pair.second}`} class={verdict.real ? 'real' : 'open'}>
            <p>
              <b>{reading.bikeNames[faster]}</b> before <b>{reading.bikeNames[slower]}</b>
            </p>
            <p>
              <ResultOutput result={gap} system={system} words={apart.value} /> <span class="range">{apart.range}</span>
              {', '}
              <ResultOutput result={power} system={system} words={watts.value} />{' '}
              <span class="range">{watts.range}</span>{' '}
              {comparing === 'tyres' || comparing === 'mass' ? 'as if from the motor' : 'from the motor'}
            </p>
            <p class="verdict">
              <ResultOutput result={needed} system={system} words={verdict.text} />
            </p>
          </li>
        );
      })}
    </ul>
  );
}

/** A difference in words, seen from the other side where `sign` is negative. */
function turned<T>(
  { si = Number.NaN, low = si, high = si }: OneResult,
  sign: number,
  words: (value: number, low: number, high: number) => T,
): T {
  return sign > 0 ? words(si, low, high) : words(-si, -high, -low);
}

/** A cause below this share of the variance is not worth a row. */
const LEAST_SHARE = 0.02;
const MOST_CAUSES = 7;

/** The main causes of doubt about a motor, about the watts between two, and about the time between two. */
function doubtSentence(motor: Cause | undefined, between: Cause | undefined, times: Cause | undefined): string {
  const of = motor?.words ?? '';
  const first = `Most of the doubt about a motor’s watts is ${of}`;
  if (!between || !times) return `${first}.`;
  if (between === motor && times === motor) return `${first}, and so it is about what lies between two bikes.`;
  const rest =
    between === times
      ? `about what lies between two bikes it is ${between.words}`
      : `about the watts between two it is ${between.words}, about the time between two ${times.words}`;
  return `${first}; ${rest}. What is the same in all runs cancels between two bikes, as far as it does.`;
}

/** What the ranges are made of. */
function Doubts({ outcome }: { outcome: DayOutcome }) {
  const bikes = outcome.about?.reduction.bikes ?? [];
  const motors = rankedCauses(bikes.flatMap(({ motorPower }) => (motorPower ? [motorPower] : [])));
  const pairs = rankedPairs(outcome);
  const gaps = rankedCauses(pairs.map(({ pair }) => pair.motorPower.difference));
  const shareIn = (list: typeof motors, cause: (typeof motors)[number]['cause']): number =>
    list.find((one) => one.cause === cause)?.share ?? 0;
  const rows = motors
    .map(({ cause, share }) => ({ cause, motor: share, gap: shareIn(gaps, cause) }))
    .filter(({ motor, gap }) => Math.max(motor, gap) >= LEAST_SHARE)
    .sort((a, b) => Math.max(b.motor, b.gap) - Math.max(a.motor, a.gap))
    .slice(0, MOST_CAUSES);
  if (rows.length === 0) return null;
  return (
    <div class="day-doubts">
      <h3>Where the doubt comes from</h3>
      <p class="note">
        {doubtSentence(
          motors[0]?.cause,
          gaps[0]?.cause,
          rankedCauses(pairs.map(({ pair }) => pair.time.difference))[0]?.cause,
        )}
      </p>
      <table>
        <caption>Share of the variance: of a motor’s watts, and of the watts between two motors</caption>
        <thead>
          <tr>
            <th scope="col">Cause, and what makes it smaller</th>
            <th scope="col">Motor</th>
            {gaps.length > 0 && <th scope="col">Between two</th>}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ cause, motor, gap }) => (
            <tr key={cause.words}>
              <th scope="row">
                {capital(cause.words)} <span class="note">{cause.remedy}</span>
              </th>
              <Share of={motor} />
              {gaps.length > 0 && <Share of={gap} />}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

const Share = ({ of }: { of: number }) => (
  <td class="share-bar">
    {formatNumber(100 * of)}
    {'\u202f'}%<span style={`width:${Math.round(100 * of)}%`} />
  </td>
);

/** What was found once for the whole day. */
function Facts({ document: { system }, outcome }: Props) {
  const rolling = outcome.results.filter(({ name, si }) => name === 'rolling' && si !== undefined);
  const { reduction } = outcome.about ?? {};
  const owner = ({ bike }: OneResult): string => outcome.reading.bikeNames[outcome.numbers.indexOf(bike ?? 0)] ?? '';
  const [drag, scatter, drift] = ['drag', 'scatter', 'drift'].map((name) => resultOf(outcome, name));
  return (
    <dl class="facts">
      {rolling.map((result) => (
        <div key={result.bike ?? 0}>
          <dt>Rolling resistance{result.bike === undefined ? '' : `, tyres of ${owner(result)}`}</dt>
          <dd>
            <ResultOutput result={result} system={system} range />
          </dd>
        </div>
      ))}
      {drag?.si !== undefined && (
        <div>
          <dt>Drag area</dt>
          <dd>
            <ResultOutput result={drag} system={system} range />
          </dd>
        </div>
      )}
      {scatter?.si !== undefined && (
        <div>
          <dt>One run to the next, standard deviation {reduction?.scatter.assumed ? '(assumed)' : '(from repeats)'}</dt>
          <dd>
            <ResultOutput result={scatter} system={system} /> <span class="range">of total power</span>
          </dd>
        </div>
      )}
      {drift?.si !== undefined && (
        <div>
          <dt>Drift from run to run</dt>
          <dd>
            <ResultOutput result={drift} system={system} words={`${formatNumber(100 * drift.si, 2, true)}\u202f%`} />
          </dd>
        </div>
      )}
      <Simulated outcome={outcome} system={system} />
    </dl>
  );
}

/** How far a simulation of many such days agrees with the ranges. Nothing where the browser has no workers. */
function Simulated({ outcome, system }: { outcome: DayOutcome; system: System }) {
  const words = useSimulation(outcome, system);
  return words === '' ? null : (
    <div class="simulated">
      <dt>Ranges checked by drawing</dt>
      <dd>{words}</dd>
    </div>
  );
}

/** The sentence to print. */
function Published({ document, outcome }: Props) {
  const [copied, setCopied] = useState('');
  const sentence = publishedSentence(document, outcome);
  if (sentence === '') return null;
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(sentence);
      setCopied(sentence);
    } catch {
      // no clipboard: the sentence stands there to be copied by hand
    }
  };
  return (
    <div class="day-published">
      <h3>To publish</h3>
      <blockquote>{sentence}</blockquote>
      <p class="choices">
        <button type="button" onClick={copy}>
          Copy the sentence
        </button>{' '}
        <span role="status">{copied === sentence ? 'Copied.' : ''}</span>
      </p>
    </div>
  );
}

function Onward({ document, outcome }: Props) {
  const query = biggerHillQuery(document, outcome);
  return query === '' ? null : (
    <p class="onward">
      <a href={addressUnderBase(`/calculators/bigger-hill/${query}`)}>Carry these bikes to a bigger hill</a>{' '}
      <small>
        Ranges there are that page’s own: it takes one mean time of each bike for one run, and what this day does not
        say, such as a battery, is its example’s. What is not shown here is not shown there.
      </small>
    </p>
  );
}
