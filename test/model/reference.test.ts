import { expect, test } from 'vitest';
import { checks, deviationOf, statusWords } from '../reference/index.ts';

test.each(
  checks.map(
    (check) => [`${check.quantity}: ${check.given} (${check.source}; ${statusWords[check.status]})`, check] as const,
  ),
)('%s', (_, check) => {
  expect(Number.isFinite(check.computed())).toBe(true);
  expect(deviationOf(check)).toBeLessThanOrEqual(check.tolerance);
});

test('no two checks are the same, so that none replaces another unseen', () => {
  const names = checks.map(({ quantity, given, source, expected }) => `${quantity}|${given}|${source}|${expected}`);
  expect(new Set(names).size).toBe(names.length);
  expect(checks.length).toBeGreaterThanOrEqual(80);
});
