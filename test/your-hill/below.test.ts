import { describe, expect, test } from 'vitest';
import { isTooSteep, type Track } from '../../calculators/model/index.ts';
import { exampleOf, readLink, writeLink } from '../../calculators/scenario/index.ts';
import { profileFromText, tidyProfile } from '../../calculators/scenario/profile-text.ts';
import '../../calculators/scenario/vocabulary.ts';
import { edit } from '../../calculators/scenario/editing.ts';
import { type HillBelow, hillBelow, MOST_PIECES, type NoHill } from '../../calculators/your-hill/below.ts';
import { noHillText } from '../../calculators/your-hill/words.ts';
import { random } from '../random.ts';

/* A stretch of a recording as the hill: what the panel gives, a link takes. */

/** A recording of a road of these pieces, a point every `step` metres, as heights come from a file that was not smoothed. */
function trackOf(
  road: readonly (readonly [length: number, rise: number])[],
  step: number,
): { track: Track; height: Float64Array } {
  const [distance, height] = [[0], [250]];
  let [along, up] = [0, 250];
  for (const [length, rise] of road) {
    const points = Math.max(1, Math.round(length / step));
    for (let k = 1; k <= points; k++) {
      distance.push(along + (length * k) / points);
      height.push(up + (rise * k) / points);
    }
    along += length;
    up += rise;
  }
  const none = new Float64Array(distance.length).fill(Number.NaN);
  return {
    track: {
      distance: Float64Array.from(distance),
      elevation: Float64Array.from(height),
      time: none,
      power: none,
      cadence: none,
      heartRate: none,
      breaks: [],
    } as unknown as Track,
    height: Float64Array.from(height),
  };
}

const whole = (road: readonly (readonly [number, number])[], step = 10): HillBelow | NoHill => {
  const { track, height } = trackOf(road, step);
  return hillBelow(track, height, { from: 0, to: height.length - 1 });
};

const textOf = (hill: HillBelow | NoHill): string => ('text' in hill ? hill.text : hill.problem);

describe('a stretch as the hill', () => {
  test('with a ramp that no link takes passes over the ramp, and a link takes the rest', () => {
    // 22.8 m up on 40 m of road: tan = 22.8 ÷ √(40² − 22.8²) = 0.694
    const hill = whole([
      [80, 4],
      [40, 22.8],
      [80, 4],
    ]);
    const text = textOf(hill);
    expect(tidyProfile(text)).toEqual({ canonical: text });
    // 80 + 40 + 80 and 4 + 22.8 + 4 m: the ends stay
    const { distance, height } = profileFromText(text);
    expect([distance.at(-1), height.at(-1)]).toEqual([200, 30.8]);
    const scenario = edit(exampleOf('your-hill'), 'profile', 0, text);
    expect(scenario.cells.profile?.value).toBe(text);
    expect(readLink('your-hill', writeLink(scenario)).cells.profile?.value).toBe(text);
  });

  test('is taken by a link whatever the road, or has a reason', () => {
    const r = random(541);
    let [taken, refused] = [0, 0];
    for (let i = 0; i < 400; i++) {
      // pieces about the steepest that there may be: 0.6 of tan is 0.5145 of the way
      const road = Array.from({ length: r.chance(0.3) ? 1 : r.whole(2, 60) }, () => {
        const length = r.between(15, 60);
        return [length, length * (r.chance(0.5) ? r.between(0.5, 0.53) : r.between(-0.1, 0.6))] as const;
      });
      const hill = whole(road, r.between(3, 25));
      if ('problem' in hill) {
        refused++;
        const length = road.reduce((sum, [each]) => sum + each, 0);
        const rise = road.reduce((sum, [, each]) => sum + each, 0);
        // only what is too steep from end to end, or would be by the last decimetre, or is too short
        expect(hill.problem === 'short' ? length < 20 : isTooSteep(length - 0.1, Math.abs(rise) + 0.1)).toBe(true);
        continue;
      }
      taken++;
      expect(tidyProfile(hill.text)).toEqual({ canonical: hill.text });
      expect(hill.simple.distance.length).toBeLessThanOrEqual(MOST_PIECES + 1);
      expect(hill.simple).toEqual(profileFromText(hill.text));
    }
    expect(taken).toBeGreaterThan(200);
    expect(refused).toBeGreaterThan(20);
  });

  test.each([
    [[[200_000, 2000]], '1:200000,2000'],
    [[[200_100, 2000]], 'long'],
    // 9,000 m above the start on the way, and down again
    [
      [
        [60_000, 9000],
        [60_000, -8000],
      ],
      '1:60000,9000:60000,-8000',
    ],
    [
      [
        [60_000, 9001],
        [60_000, -8000],
      ],
      'far',
    ],
    [[[60_000, -9001]], 'far'],
    [[[20, 1]], '1:20,1'],
    [[[19.9, 1]], 'short'],
    // tan = 25 ÷ √(40² − 25²) = 0.80 from end to end
    [[[40, 25]], 'none'],
    // a road that a link could just take: 51.4 m on 100 m are 59.9 %
    [[[100, 51.4]], '1:100,51.4'],
    [[[100, 51.5]], 'none'],
  ] as const)('of %j is %s', (road, expected) => {
    expect(textOf(whole(road, 100))).toBe(expected);
  });
});

test('why a stretch is no hill is said with what to do, and that the hill below stays', () => {
  const said = (problem: NoHill['problem']): string => noHillText({ problem }, 'metric').replaceAll('\u202f', ' ');
  expect(said('none')).toBe(
    'Between these ends there is no road with heights, or only one that is steeper than 60 %. The hill below stays as it is.',
  );
  expect(said('short')).toBe(
    'This stretch is shorter than 20 m, the least that a hill can be. The hill below stays as it is.',
  );
  expect(said('long')).toBe(
    'This stretch is longer than 200 km, the most that a hill can be. Move its ends closer together. The hill below stays as it is.',
  );
  expect(said('far')).toBe(
    'This stretch goes further than 9 000 m above or below its start, the most that a hill can. Move its ends closer together. The hill below stays as it is.',
  );
});
