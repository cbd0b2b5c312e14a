import { CLIMB } from '../model/index.ts';
import { formatQuantity, NO_VALUE, type System } from '../quantities/index.ts';
import type { Analysis } from './analysis.ts';
import { MOST_CLIMBS } from './analysis.ts';
import type { Part } from './reading/recording.ts';
import { timeText, wayText } from './words.ts';

interface Props {
  part: Part;
  analysis: Analysis;
  /** place of the picked one; −1 for the reader's own stretch, undefined where nothing is picked */
  picked: number | undefined;
  system: System;
  onPick: (climb: number) => void;
  onOwn: () => void;
}

/** The climbs that were found, in the order of the way, to pick one of: what the keyboard has instead of the chart. */
export function ClimbList({ part: { track }, analysis, picked, system, onPick, onOwn }: Props) {
  const { climbs, hardest } = analysis;
  return (
    <fieldset class="climbs">
      <legend>{climbs.length > 0 ? 'Climbs found' : 'No climb was found'}</legend>
      {climbs.length === 0 && (
        <p class="behind">
          A climb gains at least {formatQuantity(CLIMB.gain, 'height', system)} at{' '}
          {formatQuantity(CLIMB.grade, 'grade', system, { trim: true })} or more. Set the ends of your own stretch
          instead.
        </p>
      )}
      {climbs.map(({ from, figures }, i) => (
        <label class="climb-choice" key={from}>
          <input type="radio" name="climb" checked={picked === i} onChange={() => onPick(i)} />
          <span class="climb-number">{i + 1}</span>
          <span class="climb-words">
            <strong>
              {formatQuantity(figures.gain, 'height', system)} up in {wayText(figures.distance, system)}
            </strong>{' '}
            <span>
              at {formatQuantity(figures.grade, 'grade', system)}
              {figures.elapsed === undefined ? '' : `, in ${timeText(figures)}`}, from{' '}
              {wayText(track.distance[from] ?? 0, system)}
              {i === hardest && climbs.length > 1 ? '; the hardest' : ''}
            </span>
          </span>
        </label>
      ))}
      <label class="climb-choice">
        <input type="radio" name="climb" checked={picked === -1} onChange={onOwn} />
        <span class="climb-number" aria-hidden="true">
          {NO_VALUE}
        </span>
        <span class="climb-words">
          <strong>My own stretch</strong> <span>with the ends that you set below</span>
        </span>
      </label>
      {climbs.length === MOST_CLIMBS && <p class="behind">The {MOST_CLIMBS} hardest are listed.</p>}
    </fieldset>
  );
}
