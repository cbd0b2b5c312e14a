import type { Answer } from '../parts/answer.ts';
import { differenceRange, differenceText } from '../parts/differences.ts';
import { Folded } from '../parts/Folded.tsx';
import { Output, resultText } from '../parts/Output.tsx';
import { SignedBarChart } from '../parts/SignedBarChart.tsx';
import { formatQuantity } from '../quantities/index.ts';
import { numberOf, parameterOf, type Result, resultOf, type Scenario } from '../scenario/index.ts';
import { CHANGES, type Change, resultName, whatChangesIt } from './outcome.ts';
import { whatChangesItRemarks } from './remarks.ts';

/** A change as the beginning of a sentence; `size` is its amount without a sign. */
const WORDS: Readonly<Record<Change, (size: string, more: boolean) => string>> = {
  mass: (size, more) => `${more ? 'Adding' : 'Taking off'} ${size}`,
  rolling: (size, more) => `${size} ${more ? 'more' : 'less'} rolling resistance`,
  power: (size, more) => `${size} ${more ? 'more' : 'less'} from you`,
  motor: (size, more) => `${size} ${more ? 'more' : 'less'} from the motor`,
  wind: (size, more) => `${size} ${more ? 'more' : 'less'} head wind`,
  altitude: (size, more) => `A hill ${size} ${more ? 'higher' : 'lower'}`,
};

function wordsOf(scenario: Scenario, change: Change): string {
  const name = `change-${change}`;
  const amount = numberOf(scenario, name);
  const size = formatQuantity(Math.abs(amount), parameterOf(name).kind, scenario.system, { trim: true });
  return WORDS[change](size, amount >= 0);
}

const signedRange = ({ low, high }: Result): string =>
  low === undefined || high === undefined ? '' : differenceRange(low, high, { sign: true });

/** Less than this is nothing, s. */
const NOTHING = 0.05;

/** What a change does, to follow its words: "costs 29 s". */
function effectOf(result: Result): { verb: string; size: string; range: string } {
  const { si = 0, low = si, high = si } = result;
  if (Math.abs(si) < NOTHING) return { verb: 'changes', size: 'nothing', range: '' };
  const size = differenceText(Math.abs(si));
  const range = low === high ? '' : low < 0 && high > 0 ? signedRange(result) : undefined;
  return si > 0
    ? { verb: 'costs', size, range: range ?? differenceRange(low, high) }
    : { verb: 'saves', size, range: range ?? differenceRange(-high, -low) };
}

/** What changes the time of a climb, and by how much. */
export function whatChangesItAnswer(scenario: Scenario, small: boolean): Answer {
  const { system } = scenario;
  const outcome = whatChangesIt(scenario);
  const output = { outcome, system };
  const result = (name: string): Result => resultOf(outcome, name);
  const time = resultText(result('time'), system);
  const [first] = outcome.ranked;
  const rows = [...outcome.ranked, ...CHANGES.filter((change) => !outcome.ranked.includes(change))];
  const bars = outcome.ranked.map((change) => {
    const { si = 0, low, high } = result(resultName(change));
    const { verb, size } = effectOf(result(resultName(change)));
    return { label: `${wordsOf(scenario, change)} ${verb}`, text: size, value: si, low, high };
  });
  const most = first && effectOf(result(resultName(first)));
  const head = first && most ? `${wordsOf(scenario, first)} ${most.verb}` : '';
  const added = numberOf(scenario, 'change-mass');
  const load = formatQuantity(Math.abs(added), 'mass', system, { trim: true });
  /** a difference with its sign; what stands in the head has its element there */
  const difference = (name: string, inHead = false) => {
    const { si } = result(name);
    const words = si === undefined ? undefined : differenceText(si, { sign: true });
    return (
      <>
        {inHead ? <strong>{words}</strong> : <Output {...output} name={name} words={words} />}
        <span class="range"> {si === undefined ? result(name).reason : signedRange(result(name))}</span>
      </>
    );
  };

  return {
    spoken: most
      ? `Most of all: ${head} ${most.size}${most.range && `, ${most.range}`}. Now the climb takes ${time}.`
      : (result('time').reason ?? ''),
    remarks: whatChangesItRemarks(scenario, outcome),
    head:
      first && most ? (
        <p class="headline">
          {head} <Output {...output} name={resultName(first)} words={most.size} class="big" />
          <span class="range">{most.range && ` 95\u202f% range ${most.range}`}</span>
        </p>
      ) : (
        <p class="headline">{result('time').reason}</p>
      ),
    details: (
      <>
        <dl class="facts">
          <div>
            <dt>Time now</dt>
            <dd>
              <Output {...output} name="time" range />
            </dd>
          </div>
          <div>
            <dt>
              Lifting {load} {added < 0 ? 'less' : 'more'}
            </dt>
            <dd>
              <Output {...output} name="lift-energy" />
            </dd>
          </div>
        </dl>
        {bars.length > 0 && (
          <figure>
            <figcaption>What each does to the time, largest first. The thin line is the 95 % range.</figcaption>
            <SignedBarChart
              {...{
                description: `What changes the time of ${time}: ${bars.map(({ label, text }) => `${label} ${text}`).join('; ')}.`,
                bars,
                sides: ['saves time', 'costs time'],
              }}
            />
          </figure>
        )}
        <Folded small={small} words="In figures">
          <table class="bikes">
            <caption>Change of the time, each by itself</caption>
            <tbody>
              {rows.map((change) => (
                <tr key={change}>
                  <th scope="row">{wordsOf(scenario, change)}</th>
                  <td>{difference(resultName(change), change === first)}</td>
                </tr>
              ))}
              <tr class="total">
                <th scope="row">All at once</th>
                <td>{difference('all-changes-time')}</td>
              </tr>
            </tbody>
          </table>
        </Folded>
      </>
    ),
  };
}
