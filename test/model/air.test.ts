import { expect, test } from 'vitest';
import { airDensity, moistAirDensity, standardAtmosphere } from '../../calculators/model/index.ts';

test.each([-5001, 11_001, Number.NaN])('standardAtmosphere(%d) refuses what is outside the troposphere', (altitude) => {
  expect(() => standardAtmosphere(altitude)).toThrow('from −5,000 to 11,000 m');
});

test('standardAtmosphere(altitude) obeys the gas law, with 287.05287 J/(kg K)', () => {
  for (const altitude of [-430, 0, 1234, 6000, 11_000]) {
    const { temperature, pressure, density } = standardAtmosphere(altitude);
    expect(pressure / (temperature * density)).toBeCloseTo(287.05287, 9);
  }
});

test('air thins with altitude, warmth and moisture', () => {
  for (let altitude = -400; altitude < 6000; altitude += 100)
    expect(standardAtmosphere(altitude + 100).density).toBeLessThan(standardAtmosphere(altitude).density);
  for (let celsius = -40; celsius < 50; celsius += 5) {
    expect(airDensity(500, celsius + 5)).toBeLessThan(airDensity(500, celsius));
    expect(moistAirDensity(95_000, celsius, 1)).toBeLessThan(moistAirDensity(95_000, celsius, 0));
  }
});

test('assuming half humidity errs by less than 1 % from 0 to 30 °C', () => {
  for (const celsius of [0, 10, 20, 30]) {
    const half = moistAirDensity(95_000, celsius, 0.5);
    for (const humidity of [0, 1])
      expect(Math.abs(moistAirDensity(95_000, celsius, humidity) / half - 1)).toBeLessThan(0.01);
  }
});

test('airDensity(altitude, temperature) is CIPM-2007 at the standard pressure of that altitude and half humidity', () => {
  expect(airDensity(0, 20)).toBe(moistAirDensity(101_325, 20, 0.5));
  // 1,500 m has 84,559.7 Pa (ISO 2533)
  expect(airDensity(1500, 30)).toBeCloseTo(moistAirDensity(84_559.67, 30, 0.5), 7);
});
