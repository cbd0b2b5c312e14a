import { useEffect, useState } from 'preact/hooks';
import type { ClimbFigures } from '../model/index.ts';
import type { Handle as Tool } from '../parts/useScenario.ts';
import { parameterOf, valueText } from '../scenario/index.ts';
import type { Analysis } from './analysis.ts';
import { CalibratedRide } from './CalibratedRide.tsx';
import type { Calibrated } from './calibrated.ts';
import { rideSetting } from './calibration.ts';
import type { OwnRide } from './keptRecording.ts';
import { OwnField } from './OwnField.tsx';
import { PanelFold } from './PanelFold.tsx';
import type { RecordingHandle } from './useRecording.ts';

interface Props {
  tool: Tool;
  state: RecordingHandle;
  /** of the track that the stretch belongs to */
  analysis: Analysis;
  figures: ClimbFigures;
  stretch: { from: number; to: number };
}

const UNSAID: OwnRide = { unassisted: false };

/** What a ride without a motor says of the surface, and of the air where it can. A route and a descent say nothing. */
export function Calibration({ tool, state, analysis, figures, stretch }: Props) {
  const ride = state.choice.ride ?? UNSAID;
  const result = useCalibrated(tool, state, analysis, stretch, ride);
  if (figures.elapsed === undefined || figures.gain < 0) return null;
  const { scenario } = tool;
  const hasPower = figures.power.coverage > 0;
  const mass = (name: 'rider' | 'bike') => (
    <OwnField
      id={`calibration-${name}`}
      label={name === 'rider' ? 'Rider and kit on that ride' : 'Bike on that ride'}
      kind="mass"
      value={ride[name]}
      min={parameterOf(name).min}
      max={parameterOf(name).max}
      system={scenario.system}
      hint={`The calculator below has ${valueText(scenario, name)}.`}
      onValue={(si) => state.sayOfRide({ ...ride, [name]: si })}
      onNone={() => state.sayOfRide({ ...ride, [name]: undefined })}
    />
  );
  return (
    <PanelFold
      class="calibration"
      words="How well this surface rolls, from a ride without a motor"
      open={ride.unassisted}
    >
      <p class="behind">
        A ride with power and without a motor tells how well this surface rolls. With a motor’s help it does not: nobody
        recorded what the motor gave.{!hasPower && ' There is no power on this stretch.'}
      </p>
      {hasPower && (
        <label class="tick">
          <input
            type="checkbox"
            checked={ride.unassisted}
            onChange={({ currentTarget }) => state.sayOfRide({ ...ride, unassisted: currentTarget.checked })}
          />
          This was ridden without a motor’s help
        </label>
      )}
      {hasPower && ride.unassisted && (
        <>
          <div class="fields">
            {mass('rider')}
            {mass('bike')}
          </div>
          {result ? (
            <CalibratedRide tool={tool} result={result} />
          ) : (
            <p class="behind">Both weights are needed, as they were on that day.</p>
          )}
        </>
      )}
    </PanelFold>
  );
}

/** What the ride says with the weights that were given; undefined until both are, and while it is worked out. */
function useCalibrated(
  { scenario }: Tool,
  { ask, moving }: RecordingHandle,
  analysis: Analysis,
  { from, to }: { from: number; to: number },
  { unassisted, rider, bike }: OwnRide,
): Calibrated | undefined {
  const [result, setResult] = useState<Calibrated | undefined>(undefined);
  const setting =
    unassisted && rider !== undefined && bike !== undefined ? rideSetting(scenario, { rider, bike }) : undefined;
  // the same numbers give the same answer, whatever else changes in the scenario
  const asked = JSON.stringify(setting);
  useEffect(() => {
    setResult(undefined);
    if (!setting || moving) return;
    return ask({ is: 'calibration', stretch: { from, to }, setting }, setResult);
  }, [moving, asked, analysis, from, to]);
  return result;
}
