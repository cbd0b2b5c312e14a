import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { distanceBetween } from '../../calculators/your-hill/reading/geodesy.ts';
import { random } from '../random.ts';
import { GRS80, haversine, vincenty, WGS84 } from './vincenty.ts';

const degrees = (whole: number, minutes: number, seconds: number): number => whole + minutes / 60 + seconds / 3600;

describe('distance on the ellipsoid', () => {
  it('finds Flinders Peak to Buninyong, the worked example of the Australian geodetic datum', () => {
    // ICSM, Geocentric Datum of Australia technical manual: 54 972.271 m on GRS 80 (values from memory, recomputed by Vincenty's formulas)
    const places = [
      -degrees(37, 57, 3.7203),
      degrees(144, 25, 29.5244),
      -degrees(37, 39, 10.1561),
      degrees(143, 55, 35.3839),
    ] as const;
    expect(vincenty(...places, GRS80)).toBeCloseTo(54_972.271, 3);
    // the flattening of WGS 84 differs in its ninth digit: 1.6 × 10⁻¹¹ of 55 km, about a micrometre
    expect(Math.abs(vincenty(...places, WGS84) - vincenty(...places, GRS80))).toBeLessThan(1e-5);
    expect(distanceBetween(...places)).toBeCloseTo(54_972.271, 3);
  });

  it('finds the published geodesics that ship with the library', () => {
    // Karney's test set: latitude, longitude, azimuth of both ends, then s12 in metres
    const file = fileURLToPath(import.meta.resolve('geographiclib-geodesic')).replace(/[^/]*$/, 'test/geodesictest.js');
    const lines = readFileSync(file, 'utf8').split('testcases = [')[1]?.split('];')[0] ?? '';
    const cases = [...lines.matchAll(/\[([^\]]+)\]/g)].map(([, numbers = '']) => numbers.split(',').map(Number));
    expect(cases).toHaveLength(20);
    expect(cases[0]?.[6]).toBeCloseTo(8_935_244.56048183, 8);
    // his own tolerance
    for (const [lat1 = 0, lon1 = 0, , lat2 = 0, lon2 = 0, , metres = 0] of cases)
      expect(Math.abs(distanceBetween(lat1, lon1, lat2, lon2) - metres)).toBeLessThan(1e-8);
  });

  it('agrees with Vincenty between points as far apart as those of a recording, and with a sphere as far as one can', () => {
    const { between } = random(12);
    for (let i = 0; i < 500; i++) {
      const [lat, lon] = [between(-80, 80), between(-180, 180)];
      const [lat2, lon2] = [lat + between(-0.01, 0.01), lon + between(-0.01, 0.01)];
      const metres = distanceBetween(lat, lon, lat2, lon2);
      // Vincenty's iteration stops at 10⁻¹² of a radian, 6.4 µm on the ground
      expect(Math.abs(metres - vincenty(lat, lon, lat2, lon2))).toBeLessThan(6.4e-6);
      // a sphere is wrong by up to 0.56 % (a degree of the meridian at the equator: 110 574.4 m against 111 195.1 m)
      expect(Math.abs(metres / haversine(lat, lon, lat2, lon2) - 1)).toBeLessThan(0.0057);
    }
  });

  it('is nothing between a place and itself, and the same over the date line', () => {
    expect(distanceBetween(12, 34, 12, 34)).toBe(0);
    expect(distanceBetween(0, 179.9995, 0, -179.9995)).toBeCloseTo(distanceBetween(0, 0, 0, 0.001), 6);
    // a degree along the equator: 6 378 137 m × π / 180
    expect(distanceBetween(0, 10, 0, 11)).toBeCloseTo((6_378_137 * Math.PI) / 180, 6);
  });
});
