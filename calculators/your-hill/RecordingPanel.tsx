import type { Handle } from '../parts/useScenario.ts';
import type { Given } from './Recording.tsx';

interface Props {
  tool: Handle;
  /** the last file that the reader gave; null where only a kept recording is to be shown */
  given: Given | null;
}

export function RecordingPanel(_props: Props) {
  return null;
}
