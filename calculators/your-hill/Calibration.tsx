import { useEffect, useState } from 'preact/hooks';
import { LEAST_ROAD, type RideCalibration } from '../model/index.ts';
import { ResultOutput } from '../parts/Output.tsx';
import type { Handle as Tool } from '../parts/useScenario.ts';
import { formatQuantity } from '../quantities/index.ts';
import { numberOf, parameterOf, type Result } from '../scenario/index.ts';
import type { Analysis } from './analysis.ts';
import { causesOf, rideSetting, supported, supportedRange, uncalibratedText } from './calibration.ts';
import { OwnField } from './OwnField.tsx';
import type { Ask } from './useWorkbench.ts';

interface Props {
  tool: Tool;
  ask: Ask;
  /** of the track that the stretch belongs to */
  analysis: Analysis;
  stretch: { from: number; to: number };
  /** an end is being moved */
  moving: boolean;
}

/** What a ride without a motor says of the surface, and of the air where it can. */
export function Calibration({ tool, ask, analysis, stretch, moving }: Props) {
  const { scenario } = tool;
  const { system } = scenario;
  const [unassisted, setUnassisted] = useState(false);
  const [own, setOwn] = useState<{ rider?: number; bike?: number }>({});
  const rider = own.rider ?? numberOf(scenario, 'rider');
  const bike = own.bike ?? numberOf(scenario, 'bike');
  const [result, setResult] = useState<RideCalibration | undefined>(undefined);
  const setting = rideSetting(scenario, { rider, bike });
  // the same numbers give the same answer, whatever else changes in the scenario
  const asked = JSON.stringify(setting);
  const { from, to } = stretch;
  useEffect(() => {
    setResult(undefined);
    if (!unassisted || moving) return;
    return ask({ is: 'calibration', stretch: { from, to }, setting }, setResult);
  }, [unassisted, moving, asked, analysis, from, to]);
  const [used, setUsed] = useState('');
  useEffect(() => setUsed(''), [result]);

  const use = (): void => {
    if (!result || 'problem' in result) return;
    const drag = result.dragAreaIsInformed ? supported(result.dragArea) : undefined;
    tool.change(({ edit }, before) => {
      const after = edit(before, 'rolling', 0, supported(result.rolling));
      return drag === undefined ? after : edit(after, 'drag', 0, drag);
    });
    setUsed(drag === undefined ? 'Rolling resistance is set below.' : 'Rolling resistance and drag are set below.');
  };
  const metres = (si: number): string => formatQuantity(si, 'distance', system);
  const mass = (name: 'rider' | 'bike') => (
    <OwnField
      id={`calibration-${name}`}
      label={name === 'rider' ? 'Rider and kit on that ride' : 'Bike on that ride'}
      kind="mass"
      value={name === 'rider' ? rider : bike}
      min={parameterOf(name).min}
      max={parameterOf(name).max}
      system={system}
      onValue={(si) => setOwn((before) => ({ ...before, [name]: si }))}
    />
  );
  return (
    <div class="calibration">
      <label class="tick">
        <input
          type="checkbox"
          checked={unassisted}
          onChange={({ currentTarget }) => setUnassisted(currentTarget.checked)}
        />
        This was ridden without a motor’s help
      </label>
      {!unassisted && (
        <p class="behind">
          A ride with power and without a motor tells how well this surface rolls. With a motor’s help it does not:
          nobody recorded what the motor gave.
        </p>
      )}
      {unassisted && (
        <div class="fields">
          {mass('rider')}
          {mass('bike')}
        </div>
      )}
      {result && 'problem' in result && (
        <p class="problem" role="status">
          {uncalibratedText(result, { used: metres(result.distance), least: metres(LEAST_ROAD) })}
        </p>
      )}
      {result && !('problem' in result) && (
        <>
          <dl class="facts">
            <div>
              <dt>Rolling resistance</dt>
              <dd>
                <ResultOutput
                  result={{
                    name: 'calibrated-rolling',
                    kind: 'ratio',
                    si: result.rolling.value,
                    ...ends(result.rolling),
                  }}
                  system={system}
                  words={supported(result.rolling)}
                />{' '}
                <span class="range">95&#8239;% range {supportedRange(result.rolling)}</span>
              </dd>
            </div>
            {result.dragAreaIsInformed && (
              <div>
                <dt>Drag area</dt>
                <dd>
                  <ResultOutput
                    result={{
                      name: 'calibrated-drag',
                      kind: 'area',
                      si: result.dragArea.value,
                      ...ends(result.dragArea),
                    }}
                    system={system}
                    words={`${supported(result.dragArea)}\u202fm²`}
                  />{' '}
                  <span class="range">95&#8239;% range {supportedRange(result.dragArea)}&#8239;m²</span>
                </dd>
              </div>
            )}
          </dl>
          <p class="behind">
            From {metres(result.used.distance)} of this stretch, with the air, wind and drive of the fields below. Most
            of the doubt: {causesOf(result.rolling).join(', ')}.
            {!result.dragAreaIsInformed && ' It was too slow, or too even, to tell how much air was pushed.'}
          </p>
          <div class="choices">
            <button type="button" onClick={use}>
              Use this rolling resistance below
            </button>
          </div>
        </>
      )}
      <p class="behind" role="status">
        {used}
      </p>
    </div>
  );
}

const ends = ({ low, high }: { low: number; high: number }): Pick<Result, 'low' | 'high'> => ({
  ...(Number.isFinite(low) ? { low } : {}),
  ...(Number.isFinite(high) ? { high } : {}),
});
