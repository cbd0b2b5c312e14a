import { describe, expect, test } from 'vitest';
import {
  boundsOf,
  climbOfStretch,
  moveEnd,
  nearestPoint,
  placeEnd,
  type Stretch,
  stepEnd,
} from '../../calculators/your-hill/stretch.ts';

/** Points every 8 m, with a wait of three points at 80 m. */
const distance = Float64Array.of(0, 8, 16, 24, 32, 40, 48, 56, 64, 72, 80, 80, 80, 88, 96, 104, 112, 120, 128, 136);
const stretch = (from: number, to: number): Stretch => ({ from, to, own: false });

describe('points of a way', () => {
  test.each([
    [-5, 0],
    [3, 0],
    [5, 1],
    [51, 6],
    [53, 7],
    [999, 19],
  ])('nearest to %d m is point %d', (metres, index) => {
    expect(nearestPoint(distance, metres)).toBe(index);
  });
});

describe('moving an end', () => {
  test('a start lies after what was waited there, a top before it', () => {
    expect(moveEnd(distance, stretch(0, 19), 'start', 81).from).toBe(12);
    expect(moveEnd(distance, stretch(0, 19), 'top', 81).to).toBe(10);
  });

  test('the ends stay at least 50 m apart', () => {
    // 136 − 50 = 86 m: the last point before it is at 80 m
    expect(moveEnd(distance, stretch(0, 19), 'start', 130)).toEqual({ from: 12, to: 19, own: true });
    // 24 + 50 = 74 m: the first point after it is at 80 m
    expect(moveEnd(distance, stretch(3, 19), 'top', 0)).toEqual({ from: 3, to: 10, own: true });
  });

  test('a step of 10 m finds a point 8 m on, and one where points are 30 m apart still gets on', () => {
    expect(stepEnd(distance, stretch(1, 19), 'start', 10).from).toBe(2);
    expect(stepEnd(distance, stretch(2, 19), 'start', -10).from).toBe(1);
    const sparse = Float64Array.of(0, 30, 60, 90, 120, 150);
    expect(stepEnd(sparse, stretch(1, 5), 'start', 10).from).toBe(2);
    expect(stepEnd(sparse, stretch(1, 5), 'start', -10).from).toBe(0);
    expect(stepEnd(sparse, stretch(1, 4), 'top', 10).to).toBe(5);
  });

  test('a step leaves a wait behind', () => {
    expect(stepEnd(distance, stretch(12, 19), 'start', -2).from).toBe(9);
    expect(stepEnd(distance, stretch(0, 10), 'top', 2).to).toBe(13);
  });

  test('at either end of the way a step stays there', () => {
    expect(stepEnd(distance, stretch(0, 19), 'start', -100)).toEqual({ from: 0, to: 19, own: true });
    expect(stepEnd(distance, stretch(0, 19), 'top', 100)).toEqual({ from: 0, to: 19, own: true });
  });

  test('a way shorter than that keeps its ends', () => {
    const short = Float64Array.of(0, 10, 20);
    expect(moveEnd(short, stretch(0, 2), 'start', 20)).toMatchObject({ from: 0, to: 2 });
  });
});

test('a climb that moved a little when heights were smoothed otherwise is the same climb', () => {
  const climbs = [
    { from: 0, to: 5 },
    { from: 8, to: 15 },
  ];
  expect(climbOfStretch(distance, climbs, { from: 4, to: 14 })).toBe(1);
  expect(climbOfStretch(distance, climbs, { from: 16, to: 19 })).toBe(-1);
});

describe('an end that is written', () => {
  /** Points every 10 m, 2 km in all. */
  const even = Float64Array.from({ length: 201 }, (_, i) => 10 * i);

  test('beyond the other end takes that along: a start of 700 m before a top of 670 m became 640 m', () => {
    expect(placeEnd(even, stretch(20, 67), 'start', 700)).toEqual({ from: 70, to: 117, own: true });
    expect(placeEnd(even, stretch(90, 130), 'top', 400)).toEqual({ from: 0, to: 40, own: true });
  });

  test('takes the other end as far as the way goes', () => {
    expect(placeEnd(even, stretch(20, 120), 'start', 1900)).toEqual({ from: 190, to: 200, own: true });
    expect(placeEnd(even, stretch(80, 180), 'top', 60)).toEqual({ from: 0, to: 6, own: true });
  });

  test('leaves the other one where it is while there is room', () => {
    expect(placeEnd(even, stretch(20, 67), 'start', 300)).toEqual({ from: 30, to: 67, own: true });
    expect(placeEnd(even, stretch(20, 67), 'top', 250)).toEqual({ from: 20, to: 25, own: true });
  });

  test('can be where the other has at least 50 m', () => {
    expect(boundsOf('start', 2000)).toEqual({ min: 0, max: 1950 });
    expect(boundsOf('top', 2000)).toEqual({ min: 50, max: 2000 });
    expect(boundsOf('start', 30)).toEqual({ min: 0, max: 0 });
    expect(boundsOf('top', 30)).toEqual({ min: 30, max: 30 });
  });
});
