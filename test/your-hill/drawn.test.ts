import { describe, expect, test } from 'vitest';
import { drawnLines, gapsIn, heightsOf, ticksBetween } from '../../calculators/your-hill/drawn.ts';
import { generator } from '../random.ts';

const columns = (points: number, height: (i: number) => number): [Float64Array, Float64Array] => [
  Float64Array.from({ length: points }, (_, i) => 5 * i),
  Float64Array.from({ length: points }, (_, i) => height(i)),
];

describe('the line of a profile', () => {
  test('of 100,000 points about 600 are drawn, the highest and the lowest among them', () => {
    const next = generator(5);
    const [distance, height] = columns(100_000, () => 500 + 20 * next());
    height[41_234] = 900;
    height[77_777] = 3;
    const [line = []] = drawnLines(distance, height, [], { low: 0, high: 499_995 });
    expect(line.length).toBeGreaterThan(300);
    expect(line.length).toBeLessThan(620);
    expect(line).toContainEqual([5 * 41_234, 900]);
    expect(line).toContainEqual([5 * 77_777, 3]);
    expect(line[0]?.[0]).toBe(0);
    expect(line.at(-1)?.[0]).toBe(499_995);
    expect(line.every(([x], i) => i === 0 || x > (line[i - 1]?.[0] ?? 0))).toBe(true);
  });

  test('few points are all drawn', () => {
    const [distance, height] = columns(20, (i) => 100 + i);
    expect(drawnLines(distance, height, [], { low: 0, high: 95 })).toEqual([
      Array.from({ length: 20 }, (_, i) => [5 * i, 100 + i]),
    ]);
  });

  test('a break and a hole part it', () => {
    const [distance, height] = columns(30, (i) => i);
    for (let i = 20; i < 25; i++) height[i] = Number.NaN;
    const breaks = [{ index: 10, why: 'file' as const, seconds: 60, apart: 400 }];
    const lines = drawnLines(distance, height, breaks, { low: 0, high: 145 });
    expect(lines.map((line) => [line[0]?.[0], line.at(-1)?.[0]])).toEqual([
      [0, 45],
      [50, 95],
      [125, 145],
    ]);
    expect(gapsIn(distance, height, breaks)).toEqual([50]);
  });

  test('a pause on the spot is no gap', () => {
    const [distance, height] = columns(30, (i) => i);
    expect(gapsIn(distance, height, [{ index: 10, why: 'timer', seconds: 60, apart: 3 }])).toEqual([]);
  });

  test('of a part of the way it reaches both edges, and goes little beyond', () => {
    const [distance, height] = columns(1000, (i) => i);
    const [line = []] = drawnLines(distance, height, [], { low: 1002, high: 2003 });
    expect(line[0]?.[0]).toBe(1000);
    expect(line.at(-1)?.[0]).toBeGreaterThanOrEqual(2003);
    expect(line.at(-1)?.[0]).toBeLessThan(2030);
    expect(line.length).toBeGreaterThan(150);
  });
});

test('points further apart than the slices are drawn up to the first one beyond the edge', () => {
  // it went round for ever where the next point lay more than a slice beyond the edge
  const [distance, height] = columns(10, (i) => i);
  const [line = []] = drawnLines(distance, height, [], { low: 7, high: 22 });
  expect(line.map(([x]) => x)).toEqual([5, 10, 15, 20, 25]);
});

test('noise on the flat is not drawn as a hill', () => {
  const { low, high } = heightsOf([
    [
      [0, 100],
      [10, 101],
    ],
  ]);
  expect(high - low).toBeCloseTo(20, 9);
  expect((low + high) / 2).toBeCloseTo(100.5, 9);
});

test('marks are round in the reader’s unit and lie between the ends', () => {
  expect(ticksBetween({ low: 130, high: 270 }, 'height', 'metric').ticks.map(({ text }) => text)).toEqual([
    '150',
    '200',
    '250',
  ]);
  // 0.5 to 1.5 mi
  const { unit, ticks } = ticksBetween({ low: 804.672, high: 2414.016 }, 'distance', 'us', 5);
  expect(unit).toBe('mi');
  expect(ticks.map(({ text }) => text)).toEqual(['0.6', '0.8', '1.0', '1.2', '1.4']);
  expect(ticks[2]?.at).toBeCloseTo(1609.344, 6);
});

test('an axis has three marks at least, where one number made no scale', () => {
  // 2,080 to 2,960 ft stood beside "2,500" alone in steps of 500
  const { ticks } = ticksBetween({ low: 634, high: 902 }, 'height', 'us');
  expect(ticks.map(({ text }) => text)).toEqual(['2\u202f200', '2\u202f400', '2\u202f600', '2\u202f800']);
  for (const [low, high] of [
    [0, 21],
    [95, 149],
    [640, 655],
    [0, 2930],
  ] as const)
    for (const system of ['metric', 'us'] as const)
      for (const kind of ['height', 'distance'] as const)
        expect(
          ticksBetween({ low, high }, kind, system).ticks.length,
          `${low} to ${high} ${kind} ${system}`,
        ).toBeGreaterThan(2);
});
