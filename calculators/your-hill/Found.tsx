import { ResultOutput } from '../parts/Output.tsx';
import { formatQuantity, type System } from '../quantities/index.ts';
import { exact, type Result } from '../scenario/index.ts';
import type { Analysis, ElevationChoice } from './analysis.ts';
import { coverageText, disagreementText, MEASURED, mendedTexts, missingText, pausesText } from './found-words.ts';
import { missingIn, pausesOf } from './interruptions.ts';
import type { Part } from './reading/recording.ts';
import { wayText } from './words.ts';

interface Props {
  part: Part;
  analysis: Analysis;
  choice: ElevationChoice;
  system: System;
}

const NO_HEIGHTS = 'The file has no heights.';

/** What is in a part of a recording: way, heights by each method, what was mended, pauses, what was measured. */
export function Found({ part, analysis, choice, system }: Props) {
  const { track, device, distanceFrom } = part;
  const { gains, compared, figures, mended } = analysis;
  const metres = (si: number): string => formatQuantity(si, 'height', system, { digits: 1, trim: true });
  const gain = (name: string, si: number | undefined, reason: string): Result =>
    exact(`file-gain-${name}`, 'height', si ?? Number.NaN, reason);
  const rows: [label: string, result: Result, words?: string][] = [
    [
      `After smoothing over ${metres(choice.window)}`,
      gain('smoothed', gains.smoothed, NO_HEIGHTS),
      'every rise of the smoothed road',
    ],
    [
      `By a threshold of ${metres(choice.threshold)}`,
      gain('threshold', gains.threshold, NO_HEIGHTS),
      'rises that exceed it before a fall does',
    ],
    [
      'As recorded',
      gain('raw', gains.raw, NO_HEIGHTS),
      `every step up${mended.length > 0 ? ' after mending' : ''}, noise included`,
    ],
    [
      'The device’s own',
      gain('device', device.gain, 'The device wrote none.'),
      device.gain === undefined ? 'the device wrote none' : 'by a method it does not tell',
    ],
    ['Last height less first', gain('net', gains.net, NO_HEIGHTS), 'none of it on a loop'],
  ];
  const off = compared && Math.abs(compared.positions - compared.counter);
  const sentences = [
    disagreementText(part, compared, system),
    ...mendedTexts(mended, track, system),
    pausesText(track, figures, pausesOf(track), system),
    ...coverageText(figures, part),
    ...MEASURED.map(([name, words]) => missingText(words, missingIn(track, name), system)),
  ].filter(Boolean);
  return (
    <>
      <dl class="facts">
        <Fact
          label={distanceFrom === 'positions' ? 'Way by positions' : 'Way by the counter'}
          system={system}
          result={exact('file-distance', 'distance', figures.distance, '')}
        />
        {compared && (
          <>
            <Fact
              label="Way by the device’s counter"
              system={system}
              result={exact('file-counter', 'distance', compared.counter, '')}
            />
            <Fact
              label="They differ by"
              system={system}
              result={exact('file-difference', 'distance', off ?? Number.NaN, '')}
            />
          </>
        )}
        {figures.elapsed !== undefined && (
          <>
            <Fact label="Time" system={system} result={exact('file-time', 'duration', figures.elapsed, '')} />
            <Fact
              label="Without pauses"
              system={system}
              result={exact('file-riding-time', 'duration', figures.riding ?? Number.NaN, '')}
            />
          </>
        )}
      </dl>
      <table class="gains">
        <caption>Height gained on the whole way, by each way to count it</caption>
        <tbody>
          {rows.map(([label, result, words]) => (
            <tr key={result.name}>
              <th scope="row">
                {label}
                {words && <small>{words}</small>}
              </th>
              <td>
                <ResultOutput result={result} system={system} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <ul class="remarks">
        {sentences.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </>
  );
}

function Fact({ label, result, system }: { label: string; result: Result; system: System }) {
  return (
    <div>
      <dt>{label}</dt>
      <dd>
        <ResultOutput
          result={result}
          system={system}
          words={result.kind === 'distance' && result.si !== undefined ? wayText(result.si, system) : undefined}
        />
      </dd>
    </div>
  );
}
