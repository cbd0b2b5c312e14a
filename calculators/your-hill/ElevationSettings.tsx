import { GAIN_THRESHOLD, SMOOTHING_WINDOW } from '../model/index.ts';
import type { System } from '../quantities/index.ts';
import { formatQuantity } from '../quantities/index.ts';
import type { ElevationChoice } from './analysis.ts';
import { OwnField } from './OwnField.tsx';

interface Props {
  choice: ElevationChoice;
  system: System;
  onChange: (next: Partial<ElevationChoice>) => void;
}

/** How heights are smoothed, and how small a rise counts. */
export function ElevationSettings({ choice, system, onChange }: Props) {
  const [window, threshold] = [SMOOTHING_WINDOW, GAIN_THRESHOLD].map((si) => formatQuantity(si, 'height', system));
  return (
    <fieldset class="elevation-settings">
      <legend>How heights are read</legend>
      <p class="behind">
        Usual here: {window} and {threshold}. There is no accepted standard: change them and see.
      </p>
      <div class="fields">
        <OwnField
          id="smoothing-window"
          label="Smoothed over"
          kind="height"
          value={choice.window}
          decimals={1}
          min={0}
          max={1000}
          system={system}
          onValue={(si) => onChange({ window: si })}
          hint="Along the road. Shapes the climbs and the gain after smoothing."
        />
        <OwnField
          id="gain-threshold"
          label="Least rise that counts"
          kind="height"
          value={choice.threshold}
          decimals={1}
          min={0}
          max={100}
          system={system}
          onValue={(si) => onChange({ threshold: si })}
          hint="For the gain by threshold alone."
        />
      </div>
    </fieldset>
  );
}
