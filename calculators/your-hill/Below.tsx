import type { Handle as Tool } from '../parts/useScenario.ts';
import { formatNumber, formatQuantity, formatRange } from '../quantities/index.ts';
import { numberOf, valueText } from '../scenario/index.ts';
import type { HillBelow, NoHill } from './below.ts';
import { noHillText } from './words.ts';
import type { StretchFigures } from './workbench.ts';

interface Props {
  tool: Tool;
  /** undefined until that is known */
  hill: HillBelow | NoHill | undefined;
  figures: StretchFigures | undefined;
  isBelow: boolean;
  /** it was found, and not set by hand */
  isClimb: boolean;
  onPut: () => void;
}

/** m between the altitude below and the recording's before the air differs by more than it is known: 1 % of density is about 90 m. */
const ALTITUDE_APART = 50;

/** Whether the picked stretch is the hill that the calculator rides, and the way to its answer. */
export function Below({ tool, hill, figures, isBelow, isClimb, onPut }: Props) {
  if (hill === undefined) return <p class="waiting">One moment…</p>;
  const { system } = tool.scenario;
  if ('problem' in hill) return <p class="problem">{noHillText(hill, system)}</p>;
  const what = isClimb ? 'This climb' : 'This stretch';
  const gain = figures?.figures.gain ?? 0;
  const altitude = figures?.altitude;
  const isElsewhere = altitude && Math.abs(altitude.mean - numberOf(tool.scenario, 'altitude')) > ALTITUDE_APART;
  const takeAltitude = (): void => {
    // as it reads in the field: whole metres or feet
    if (altitude)
      tool.change(({ edit }, before) => edit(before, 'altitude', 0, formatQuantity(altitude.mean, 'height', system)));
  };
  return (
    <div class="below">
      <p>
        <span>
          {isBelow ? (
            <>
              <strong>{what} is the hill below</strong>, in {formatNumber(hill.simple.distance.length - 1)} pieces for{' '}
              {formatNumber(hill.full.distance.length)} points.
            </>
          ) : (
            'The hill below is another one.'
          )}
          {gain < 0 && ` It goes down, by ${formatQuantity(-gain, 'height', system)}.`}
        </span>
        {isBelow ? (
          <button type="button" class="to-answer" onClick={toAnswer}>
            To the answer
          </button>
        ) : (
          <button type="button" onClick={onPut}>
            Make {what.toLowerCase()} the hill below
          </button>
        )}
      </p>
      {isBelow && altitude && isElsewhere && (
        <p class="behind no-print">
          <span>
            It lies {formatRange(altitude.low, altitude.high, 'height', system)} above the sea; the air below is that of{' '}
            {valueText(tool.scenario, 'altitude')}.
          </span>
          <button type="button" onClick={takeAltitude}>
            Take the air of {formatQuantity(altitude.mean, 'height', system)}
          </button>
        </p>
      )}
    </div>
  );
}

/** Brings the answer into view, and the keyboard with it. */
function toAnswer({ currentTarget }: { currentTarget: EventTarget }): void {
  const frame = (currentTarget as Element).closest('.tool')?.querySelector<HTMLElement>('.tool-frame');
  if (!frame) return;
  frame.tabIndex = -1;
  frame.focus({ preventScroll: true });
  frame.scrollIntoView({ block: 'start' });
}
