import { renderToString } from 'preact-render-to-string';
import { describe, expect, test } from 'vitest';
import { biggerHillAnswer } from '../../calculators/bigger-hill/BiggerHill.tsx';
import type { ProfileRide, Span, SpanLimit } from '../../calculators/model/index.ts';
import { LinesChart } from '../../calculators/parts/LinesChart.tsx';
import { evenPoints, heldRows, ProfileFigure } from '../../calculators/parts/ProfileChart.tsx';
import { axisTicks } from '../../calculators/parts/scale.ts';
import { readLink } from '../../calculators/scenario/vocabulary.ts';
import { gapsAlong } from '../../calculators/your-hill/along.ts';

/* What the charts of a hill in pieces draw. */

const span = (limit: SpanLimit, from: number, to: number): Span => ({
  limit,
  from: { distance: from, time: from / 5 },
  to: { distance: to, time: to / 5 },
});

/** A ride that passes the points of a hill at these times. */
function passing(times: number[]): ProfileRide {
  const points = { distance: Float64Array.from(times, (_, i) => 100 * i), time: Float64Array.from(times) };
  return { time: times.at(-1), points } as unknown as ProfileRide;
}

describe('the gaps along a hill', () => {
  test('are behind the bike that is first at the top, and below zero where another was ahead of it', () => {
    const [behind, first] = gapsAlong([passing([0, 18, 50, 71]), passing([0, 20, 40, 60])], 1);
    expect(behind).toEqual([
      { distance: 0, gap: 0 },
      { distance: 100, gap: -2 },
      { distance: 200, gap: 10 },
      { distance: 300, gap: 11 },
    ]);
    expect(first?.map(({ gap }) => gap)).toEqual([0, 0, 0, 0]);
  });

  test('have no points for a bike that does not get up', () => {
    expect(gapsAlong([undefined, passing([0, 20])], 1)).toEqual([
      [],
      [
        { distance: 0, gap: 0 },
        { distance: 100, gap: 0 },
      ],
    ]);
  });

  test('keep within the chart where they are below zero', () => {
    const points = [0, -30, 60].map((y, i) => ({ x: 100 * i, y }));
    const html = renderToString(
      <LinesChart
        description=""
        lines={[{ label: 'A', points, text: '1:00' }]}
        xKind="distance"
        yKind="seconds"
        system="metric"
      />,
    );
    // from −32.4 to 64.8: zero is at two thirds of the way down, −30 at 94.8 / 97.2
    expect(html).toContain('d="M0.0 66.7L50.0 97.5L100.0 4.9"');
  });
});

test('gaps along a hill are drawn as wide as the hill, with their names inside', () => {
  const points = [0, 30, 60].map((y, i) => ({ x: 500 * i, y }));
  const lines = [{ label: 'A', points, text: '1:00' }];
  const html = renderToString(
    <LinesChart description="" lines={lines} xKind="distance" yKind="seconds" system="metric" wide />,
  );
  // the axis of the hill runs from 11 to 97 % too: 400 m stand at 45.4 %
  expect(html).toMatch(/<text x="45.4%"[^>]*>0.4</);
  expect(html).toMatch(/<text class="key" x="97%"[^>]* text-anchor="end">/);
});

test('marks of an axis below zero are round, and zero is one of them', () => {
  expect(axisTicks(95, 'height', 'metric', 4, -70).ticks).toEqual([
    { at: -50, text: '\u221250' },
    { at: 0, text: '0' },
    { at: 50, text: '50' },
  ]);
});

test('a table tells of at most nine points, as evenly spread as the hill allows, with its top', () => {
  expect(evenPoints(Float64Array.of(0, 100, 250, 300))).toEqual([1, 2, 3]);
  const many = Float64Array.from({ length: 37 }, (_, i) => 10 * i);
  expect(evenPoints(many)).toEqual([4, 8, 12, 16, 20, 24, 28, 32, 36]);
  // one long piece among short ones is told once
  expect(evenPoints(Float64Array.of(0, 10, 20, 1000))).toEqual([2, 3]);
});

describe('what holds a bike back', () => {
  test('is a row for each limit: stretches that touch are one, and their length is told', () => {
    const spans = [span('heat', 100, 200), span('endurance', 150, 400), span('heat', 200, 250), span('heat', 600, 700)];
    expect(heldRows([{ label: 'A', spans }], 'metric')).toEqual([
      {
        bike: 0,
        label: 'A',
        by: 'motor heat',
        words: 'motor heat, 250\u202fm',
        stretches: [
          { from: 100, to: 250 },
          { from: 600, to: 700 },
        ],
      },
      { bike: 0, label: 'A', by: 'tired legs', words: 'tired legs, 250\u202fm', stretches: [{ from: 150, to: 400 }] },
    ]);
  });

  test('is nothing, in words, or is not said where it is not known', () => {
    const rows = heldRows(
      [
        { label: 'A', spans: undefined },
        { label: 'B', spans: [] },
      ],
      'metric',
    );
    expect(rows).toEqual([{ bike: 1, label: 'B', by: 'nothing', words: 'nothing holds it back', stretches: [] }]);
  });

  test('stands below the same distances of the profile', () => {
    const profile = { distance: Float64Array.of(0, 500, 1000), height: Float64Array.of(0, 80, 60) };
    const html = renderToString(
      <ProfileFigure
        profile={profile}
        bikes={[{ label: 'A', spans: [span('assist-limit', 500, 1000)] }]}
        system="metric"
      />,
    );
    // the axis runs from 11 to 97 %, so 500 m stand at 54 % and 400 m at 45.4 %
    expect(html).toMatch(/<rect class="bar" x="54%" y="\d+" width="43%"/);
    expect(html).toMatch(/<text x="45.4%"[^>]*>0.4</);
    expect(html).toContain('A, assist limit, 500\u202fm: 500\u202fm to 1\u202fkm');
  });
});

test('a climb carried to a hill in pieces is drawn along its distance, as it is ridden', () => {
  const html = renderToString(
    <div>{biggerHillAnswer(readLink('bigger-hill', 'target-profile=1:600,120:600,0:300,60'), false).details}</div>,
  );
  expect(html).toContain('Time against distance on the other hill.');
  const [line = ''] = html.match(/<path class="curve" d="[^"]*"/) ?? [];
  const points = [...line.matchAll(/[ML]([\d.]+) ([\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);
  expect(points.map(([x]) => x)).toEqual([0, 40, 80, 100]);
  const taken = points.map(([, y = 0]) => 100 - y);
  const each = taken.slice(1).map((time, i) => time - (taken[i] ?? 0));
  // the flat piece is as long as the first, which climbs a fifth of its length: far faster
  expect(each[1]).toBeLessThan(0.6 * (each[0] ?? 0));
});
