import { describe, expect, test } from 'vitest';
import {
  isCommon,
  rangeBelow,
  supported,
  supportedRange,
  uncalibratedText,
  weightText,
} from '../../calculators/your-hill/calibration.ts';

const of = (value: number, half: number) => ({ value, low: value - half, high: value + half });

describe('digits', () => {
  test.each([
    // the zero at the end is a digit that was found: it read 0.02, with a range from 0.02 to 0.02
    [0.02, 0.004, '0.020', '0.016 to 0.024'],
    [0.1, 0.004, '0.100', '0.096 to 0.104'],
    [0.0247, 0.006, '0.025', '0.019 to 0.031'],
    [0.0247, 0.02, '0.02', '0.00 to 0.04'],
    [0.0247, 0.0004, '0.0247', '0.0243 to 0.0251'],
    // at least one digit of the figure stays
    [0.0042, 0.03, '0.004', '0.000 to 0.034'],
    // m² of drag area
    [0.45, 0.06, '0.45', '0.39 to 0.51'],
  ])('%d ± %d is %s, %s', (value, half, figure, range) => {
    expect(supported(of(value, half))).toBe(figure);
    expect(supportedRange(of(value, half))).toBe(range);
  });
});

describe('what a figure is worth', () => {
  test('one that hardly any surface has says so, and sends to the weights first', () => {
    expect([0.002, 0.004, 0.02, 0.05, 0.13].map((value) => isCommon(of(value, 0.001)))).toEqual([
      false,
      true,
      true,
      true,
      false,
    ]);
    expect(weightText(of(0.002, 0.001), -0.009, 'metric')).toBe(
      'Hardly any surface rolls so well. Check both weights first: 10\u202fkg more would make it 0.009 less.',
    );
    expect(weightText(of(0.13, 0.02), -0.03, 'metric')).toMatch(/^Hardly any surface rolls so badly\. /);
    expect(weightText(of(0.02, 0.004), -0.011, 'us')).toBe('22\u202flb more would make it 0.011 less.');
  });

  test('the field holds no range: the answer takes ±30 %, and a wider one is named', () => {
    // 0.3 × 0.020 is 0.006
    expect(rangeBelow(of(0.02, 0.004))).toEqual({
      isTooNarrow: false,
      text: 'In the field it counts as good to 0.014 to 0.026, as any figure that is typed there.',
    });
    expect(rangeBelow(of(0.02, 0.008))).toEqual({
      isTooNarrow: true,
      text: 'In the field it counts as good to 0.014 to 0.026. This ride is less sure than that, so the answer’s range comes out too narrow.',
    });
  });

  test('a figure that no surface has sends to the weights first, and says what they would change', () => {
    const road = { used: '', least: '' };
    const low = { problem: 'absurd' as const, coverage: 1, distance: 900, rolling: -0.01 };
    expect(uncalibratedText({ ...low, likely: ['gain', 'mass', 'drive', 'meter'] }, road, -0.009, 'metric')).toBe(
      'It asks for a rolling resistance of −0.010, which no surface has. Check both weights first: 10\u202fkg less would make it −0.001. Then the scale of the heights and the chain and gears, and whether a motor helped.',
    );
    expect(uncalibratedText({ ...low, rolling: 0.2, likely: ['gain', 'drift'] }, road, -0.05, 'metric')).toBe(
      'It asks for a rolling resistance of 0.200, which no surface has. Check both weights first: 10\u202fkg more would make it 0.150. Then the scale of the heights and the drift of the heights, and whether a brake dragged.',
    );
  });
});
