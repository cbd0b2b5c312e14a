import { useEffect, useState } from 'preact/hooks';
import { LEAST_ROAD, type CalibratedRide as Ride, type UncertainResult } from '../model/index.ts';
import { SourceLink } from '../parts/Field.tsx';
import { ResultOutput } from '../parts/Output.tsx';
import type { Handle as Tool } from '../parts/useScenario.ts';
import { formatQuantity, type Kind, type System } from '../quantities/index.ts';
import { hintOf } from '../scenario/hints.ts';
import type { Result } from '../scenario/index.ts';
import type { Calibrated } from './calibrated.ts';
import {
  causesOf,
  isCommon,
  rangeBelow,
  supported,
  supportedRange,
  uncalibratedText,
  weightText,
} from './calibration.ts';

interface Props {
  tool: Tool;
  result: Calibrated;
}

/** What a calibrated ride says, how far it can be believed, and the way to use it. */
export function CalibratedRide({ tool, result: { ride, heavier } }: Props) {
  const { system } = tool.scenario;
  const metres = (si: number): string => formatQuantity(si, 'distance', system);
  if ('problem' in ride)
    return (
      <p class="problem" role="status">
        {uncalibratedText(ride, { used: metres(ride.distance), least: metres(LEAST_ROAD) }, heavier, system)}
      </p>
    );
  const { rolling, dragArea, dragAreaIsInformed, used } = ride;
  const scale = hintOf('your-hill', 'rolling');
  return (
    <>
      <dl class="facts">
        <Figure label="Rolling resistance" name="calibrated-rolling" kind="ratio" result={rolling} system={system} />
        {dragAreaIsInformed && (
          <Figure label="Drag area" name="calibrated-drag" kind="area" result={dragArea} system={system} unit="m²" />
        )}
      </dl>
      {heavier !== undefined && (
        <p class={isCommon(rolling) ? 'behind' : 'caution'}>{weightText(rolling, heavier, system)}</p>
      )}
      {scale && (
        <p class="behind">
          For scale: {scale.text} {scale.source && <SourceLink id={scale.source} />}
        </p>
      )}
      <p class="behind">
        From {metres(used.distance)} of this stretch, with the air, wind and drive of the fields below. Most of the
        doubt: {causesOf(rolling).join(', ')}.
        {!dragAreaIsInformed &&
          ' How much air was pushed it does not tell: that takes slow and fast parts on one surface.'}
      </p>
      <Use tool={tool} ride={ride} />
    </>
  );
}

/** Puts the figures into the fields below, and says what is lost by that. */
function Use({ tool, ride }: { tool: Tool; ride: Ride }) {
  const { rolling, dragArea, dragAreaIsInformed } = ride;
  const [used, setUsed] = useState(false);
  useEffect(() => setUsed(false), [ride]);
  const use = (): void => {
    tool.change(({ edit }, before) => {
      const after = edit(before, 'rolling', 0, supported(rolling));
      return dragAreaIsInformed ? edit(after, 'drag', 0, supported(dragArea)) : after;
    });
    setUsed(true);
  };
  const what = dragAreaIsInformed ? 'rolling resistance and drag' : 'rolling resistance';
  const { text, isTooNarrow } = rangeBelow(rolling);
  return (
    <>
      <p class={isTooNarrow ? 'caution' : 'behind'}>{text}</p>
      <div class="choices">
        <button type="button" onClick={use}>
          {isCommon(rolling) ? `Use this ${what} below` : 'Use it below all the same'}
        </button>
      </div>
      <p class="behind" role="status">
        {used &&
          `Set below: ${what}.${isTooNarrow ? ' The answer’s range is narrower than what this ride tells.' : ''}`}
      </p>
    </>
  );
}

interface FigureProps {
  label: string;
  name: string;
  kind: Kind;
  result: UncertainResult;
  system: System;
  unit?: string;
}

/** A figure and its range, to the digits that the data support. */
function Figure({ label, name, kind, result, system, unit }: FigureProps) {
  const withUnit = (text: string): string => (unit ? `${text}\u202f${unit}` : text);
  return (
    <div>
      <dt>{label}</dt>
      <dd>
        <ResultOutput
          result={{ name, kind, si: result.value, ...ends(result) }}
          system={system}
          words={withUnit(supported(result))}
        />{' '}
        <span class="range">95&#8239;% range {withUnit(supportedRange(result))}</span>
      </dd>
    </div>
  );
}

const ends = ({ low, high }: { low: number; high: number }): Pick<Result, 'low' | 'high'> => ({
  ...(Number.isFinite(low) ? { low } : {}),
  ...(Number.isFinite(high) ? { high } : {}),
});
