import { addressUnderBase } from '../parts/address.ts';
import type { Answer } from '../parts/answer.ts';
import { CurveChart } from '../parts/CurveChart.tsx';
import { Folded } from '../parts/Folded.tsx';
import { Output, rangeText, resultText } from '../parts/Output.tsx';
import { ProfileFigure } from '../parts/ProfileChart.tsx';
import { formatDuration, formatQuantity, formatRange } from '../quantities/index.ts';
import { keyOf, numberOf, type Result, resultOf, type Scenario } from '../scenario/index.ts';
import { onwardQuery } from '../scenario/onward.ts';
import { keepUp } from './outcome.ts';
import { keepUpRemarks } from './remarks.ts';

type Row = [name: string, label: string, range?: boolean];

const FACTS: Row[] = [
  ['companion-time', 'Companion’s time', true],
  ['time', 'Yours as you are', true],
  ['gap', 'At the top you are'],
  ['companion-speed', 'Companion’s speed'],
  ['motor-power', 'Your motor gives there'],
  ['rider-needed-per-kilogram', 'Your legs, over your weight', true],
  ['endurance-time', 'You hold that for', true],
  ['class-needed', 'Class with such a motor'],
  ['limit-power', 'Most a motor can give you here', true],
  ['limit-time', 'No motor is faster than'],
  ['binds', 'Limit that binds'],
];

/** What a link takes at most, W. */
const MOST = { power: 1500, motor: 3000 };

/** A time behind or ahead, in words. */
function behind(seconds: number): string {
  const time = formatDuration(Math.abs(seconds));
  return time === '0:00' ? 'level' : `${time} ${seconds > 0 ? 'behind' : 'ahead'}`;
}

/** The same for its range. */
function behindRange({ low = Number.NaN, high = Number.NaN }: Result): string {
  if (Number.isNaN(low - high)) return '';
  if (low < 0 && high > 0) return `${behind(low)} to ${behind(high)}`;
  const [near, far] = low < 0 ? [-high, -low] : [low, high];
  return formatRange(near, far, 'duration', 'metric');
}

/** The same climb with the power or the motor that keeps up; nothing where no link can carry it. */
function climbLink(scenario: Scenario, name: 'power' | 'motor', { si }: Result): string | undefined {
  if (si === undefined || si < 0.001 || si > MOST[name]) return undefined;
  const canonical = `${Number(si.toPrecision(12))}W`;
  const cells = { ...scenario.cells, [keyOf(name, 0)]: { text: canonical, value: si, canonical } };
  return addressUnderBase(`/calculators/climb-time/${onwardQuery({ ...scenario, cells }, { bikes: 1 })}`);
}

/** The watts, of legs or of a motor, that take a rider up in a companion's time. */
export function keepUpAnswer(scenario: Scenario, small: boolean): Answer {
  const { system } = scenario;
  const outcome = keepUp(scenario);
  const output = { outcome, system };
  const of = (name: string): Result => resultOf(outcome, name);
  const text = (name: string): string => resultText(of(name), system);
  const legs = of('rider-needed');
  const motor = of('motor-needed');
  const gap = of('gap');
  const companion = of('companion-time');
  const time = of('time');
  const power = numberOf(scenario, 'power');
  const range = rangeText(legs, system);
  const { profile } = outcome.about?.you.hill ?? {};
  const links = [
    [climbLink(scenario, 'power', legs), 'Your climb with that power'],
    [climbLink(scenario, 'motor', motor), 'Your climb with that motor'],
  ];
  // a reason is said once
  const said = new Set([legs.reason, motor.reason]);

  return {
    spoken:
      legs.si === undefined
        ? (legs.reason ?? '')
        : `To keep up hold ${text('rider-needed')}${range && `, ${range}`}${motor.si === undefined ? '' : `, or have a motor that gives ${text('motor-needed')}`}`,
    remarks: keepUpRemarks(scenario, outcome),
    head: (
      <>
        <p class="headline">
          {legs.si === undefined
            ? legs.reason !== motor.reason && 'By your legs: '
            : gap.si !== undefined && gap.si < 0
              ? 'To stay level, hold '
              : 'To keep up, hold '}
          {legs.reason && <span class="middle">{legs.reason}</span>}
          <span hidden={legs.si === undefined}>
            <Output {...output} name="rider-needed" class="big" />
          </span>
          <span class="range">{range && ` 95\u202f% range ${range}`}</span>
        </p>
        <p class="headline" hidden={motor.reason !== undefined && motor.reason === legs.reason}>
          {motor.si === undefined ? 'By a motor: ' : 'or have a motor that gives '}
          {motor.reason && <span class="middle">{motor.reason}</span>}
          <span hidden={motor.si === undefined}>
            <Output {...output} name="motor-needed" class="middle" range />
          </span>
        </p>
      </>
    ),
    details: (
      <>
        <Folded small={small} words="Times, speed and limits">
          <dl class="facts">
            {FACTS.map(([name, label, withRange]) => (
              <div key={name}>
                <dt>{label}</dt>
                <dd>
                  <Output
                    {...output}
                    name={name}
                    range={withRange ?? false}
                    words={name === 'gap' && gap.si !== undefined ? behind(gap.si) : undefined}
                  />
                  {name === 'gap' && <span class="range"> {behindRange(gap)}</span>}
                  {!said.has(of(name).reason) && <span class="range"> {of(name).reason}</span>}
                </dd>
              </div>
            ))}
          </dl>
        </Folded>
        <p class="onward">
          {links.map(
            ([href, words]) =>
              href && (
                <a key={words} href={href}>
                  {words}
                </a>
              ),
          )}
        </p>
        {time.si !== undefined && companion.si !== undefined && outcome.curve.length > 0 && (
          <figure>
            <figcaption>
              Your time against your power, with your motor. The band is the 95 % range; the line across is your
              companion’s time.
            </figcaption>
            <CurveChart
              {...{
                description: `Your time against your power: ${outcome.curve
                  .filter((_, i) => i % 4 === 0 && i > 0)
                  .map((point) => `${formatDuration(point.time)} at ${formatQuantity(point.power, 'power', system)}`)
                  .join(
                    ', ',
                  )}. Your companion takes ${text('companion-time')}; to keep up hold ${text('rider-needed')}.`,
                points: outcome.curve.map((point) => ({ ...point, x: point.power, value: point.time })),
                xKind: 'power',
                here: {
                  x: power,
                  value: time.si,
                  low: time.low ?? time.si,
                  high: time.high ?? time.si,
                  label: `you, ${text('time')}`,
                },
                line: { x: legs.si, value: companion.si, label: `companion, ${text('companion-time')}` },
                system,
              }}
            />
          </figure>
        )}
        {profile && <ProfileFigure profile={profile} system={system} />}
      </>
    ),
  };
}
