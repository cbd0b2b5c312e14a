import type { Where } from './undoing.ts';
import type { Handle } from './useDay.ts';

/** What was taken away last, by name, and the button that brings it back. */
export function Undo({ day, where }: { day: Handle; where: Where }) {
  const last = day.undoable;
  if (last?.where !== where) return null;
  return (
    <p class="undo">
      <span>{last.words}</span>{' '}
      <button type="button" id="undo" onClick={day.undo}>
        Undo
      </button>
    </p>
  );
}
