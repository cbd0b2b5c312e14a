import { expect, test } from 'vitest';
import { opened, windowAfter, windowAround } from '../../calculators/your-hill/closeUp.ts';

/** Points every 10 m, 5 km in all. */
const distance = Float64Array.from({ length: 501 }, (_, i) => 10 * i);
const own = (from: number, to: number) => ({ from, to, own: true });

test('a picked stretch has a third of itself around it, at least 150 m, and no more than there is', () => {
  expect(windowAround(distance, own(100, 300))).toEqual({ low: 400, high: 3600 });
  expect(windowAround(distance, own(100, 110))).toEqual({ low: 850, high: 1250 });
  expect(windowAround(distance, own(0, 500))).toEqual({ low: 0, high: 5000 });
});

test('a handle that was dropped finds the same road under it', () => {
  // it jumped back, because the close-up was drawn anew around the new stretch after each drop
  const shown = windowAround(distance, own(100, 200));
  expect(windowAfter(shown, distance, own(100, 180))).toBe(shown);
  expect(windowAfter(shown, distance, own(90, 215))).toBe(shown);
  // 1,000 of 3,400 m are enough, 900 are not
  const wide = { low: 0, high: 3400 };
  expect(windowAfter(wide, distance, own(100, 205))).toBe(wide);
  expect(windowAfter(wide, distance, own(100, 190))).toEqual(windowAround(distance, own(100, 190)));
});

test('a stretch that reaches an edge gets room again, but not beyond the way', () => {
  const shown = { low: 700, high: 2300 };
  expect(windowAfter(shown, distance, own(71, 200))).toEqual(windowAround(distance, own(71, 200)));
  expect(windowAfter(shown, distance, own(300, 400))).toEqual({ low: 2700, high: 4300 });
  const whole = { low: 0, high: 5000 };
  expect(windowAfter(whole, distance, own(0, 500))).toBe(whole);
});

test('a handle that is held against an edge opens it there, as far as the way goes', () => {
  const shown = { low: 1000, high: 2000 };
  expect(opened(shown, distance, 0.5)).toBe(shown);
  expect(opened(shown, distance, 0.01)).toEqual({ low: 980, high: 2000 });
  expect(opened(shown, distance, 1.3)).toEqual({ low: 1000, high: 2020 });
  expect(opened({ low: 5, high: 4995 }, distance, -1).low).toBe(0);
  expect(opened({ low: 5, high: 4995 }, distance, 1).high).toBe(5000);
  // from a short stretch to the end of the way in less than three seconds of frames
  let window = { low: 850, high: 1250 };
  let frames = 0;
  for (; window.high < 5000; frames++) window = opened(window, distance, 1);
  expect(frames).toBeLessThan(170);
});
