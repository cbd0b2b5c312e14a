import { describe, expect, test } from 'vitest';
import {
  type Break,
  cutProfile,
  hillFromProfile,
  type Profile,
  profileError,
  rideProfile,
  simplifyProfile,
  smoothElevation,
} from '../../calculators/model/index.ts';
import { exampleRecording } from '../../calculators/your-hill/example-recording.ts';
import { type Random, random, relative } from '../random.ts';
import { PLAIN } from './climbs.ts';

const gap = (index: number): Break => ({ index, why: 'timer', seconds: 60, apart: 5 });

const profileFrom = (pieces: readonly (readonly [number, number])[]): Profile => {
  let [place, height] = [0, 0];
  const points = pieces.map(([way, rise]) => {
    place += way;
    height += rise;
    return [place, height] as const;
  });
  return {
    distance: Float64Array.of(0, ...points.map(([x]) => x)),
    height: Float64Array.of(0, ...points.map(([, y]) => y)),
  };
};

/** A road that winds up with grades that change slowly, with and without small bumps. */
function anyProfile(r: Random, points = r.whole(2, 900)): Profile {
  let grade = r.between(-0.05, 0.12);
  const bumps = r.chance(0.5) ? 0.3 : 0;
  return profileFrom(
    Array.from({ length: points - 1 }, () => {
      const way = r.between(1, 20);
      grade = Math.max(-0.3, Math.min(0.3, grade + r.between(-0.015, 0.015)));
      return [way, way * (grade + bumps * r.between(-0.5, 0.5))] as const;
    }),
  );
}

const piecesOf = ({ distance, height }: Profile): { way: number; grade: number }[] =>
  [...distance.keys()].slice(1).map((i) => {
    const way = (distance[i] ?? 0) - (distance[i - 1] ?? 0);
    return { way, grade: ((height[i] ?? 0) - (height[i - 1] ?? 0)) / way };
  });

describe('cutProfile', () => {
  test('begins at zero, ends at the last point, and rises all the way along', () => {
    const distance = Float64Array.of(0, 100, 200, 200, 200.4, 300);
    const height = Float64Array.of(400, 404, 412, 413, 412, 420);
    expect(cutProfile(distance, height, [], 1, 5)).toEqual({
      distance: Float64Array.of(0, 100, 200),
      height: Float64Array.of(0, 8, 16),
    });
    // either way round
    expect(cutProfile(distance, height, [], 5, 1)).toEqual(cutProfile(distance, height, [], 1, 5));
  });

  test('takes the jump over a break out', () => {
    const distance = Float64Array.of(0, 100, 200, 200, 300);
    const height = Float64Array.of(0, 5, 10, 13, 18);
    expect(cutProfile(distance, height, [gap(3)], 0, 4)).toEqual({
      distance: Float64Array.of(0, 100, 200, 300),
      height: Float64Array.of(0, 5, 10, 15),
    });
  });

  test('passes over a wall and a hole', () => {
    const distance = Float64Array.of(0, 100, 110, 120, 220, 320);
    const height = Float64Array.of(0, 5, 25, 6, Number.NaN, 16);
    expect(cutProfile(distance, height, [], 0, 5)).toEqual({
      distance: Float64Array.of(0, 100, 120, 320),
      height: Float64Array.of(0, 5, 6, 16),
    });
  });

  test('says that there is no road where there is none', () => {
    const distance = Float64Array.of(0, 0, 10, 12);
    const height = Float64Array.of(0, 1, 9, 10);
    for (const [from, to] of [
      [0, 1],
      [2, 2],
      [0, 2],
    ] as const)
      expect(() => cutProfile(distance, height, [], from, to)).toThrow('There is no road between these points.');
    const nowhere = new Float64Array(3).fill(Number.NaN);
    expect(() => cutProfile(Float64Array.of(0, 50, 90), nowhere, [], 0, 2)).toThrow(RangeError);
    expect(() => cutProfile(new Float64Array(0), new Float64Array(0), [], 0, 0)).toThrow(RangeError);
  });

  test('is a profile that a hill can be made of, whatever the track', () => {
    const r = random(521);
    for (let i = 0; i < 300; i++) {
      const { distance, height } = anyProfile(r);
      const rough = height.map((value) => 300 + value + (r.chance(0.05) ? r.between(-30, 30) : 0));
      const last = distance.length - 1;
      const [from, to] = [r.whole(0, last), r.whole(0, last)];
      const [low, high] = [Math.min(from, to), Math.max(from, to)];
      let cut: Profile;
      try {
        cut = cutProfile(distance, rough, [], from, to);
      } catch (problem) {
        expect(problem).toBeInstanceOf(RangeError);
        continue;
      }
      expect(cut.distance.at(-1)).toBeCloseTo((distance[high] ?? 0) - (distance[low] ?? 0), 9);
      expect(cut.height.at(-1)).toBeCloseTo((rough[high] ?? 0) - (rough[low] ?? 0), 9);
      expect([cut.distance[0], cut.height[0]]).toEqual([0, 0]);
      for (const { way, grade } of piecesOf(cut)) {
        expect(way).toBeGreaterThanOrEqual(1);
        expect(Math.abs(grade)).toBeLessThan(0.6);
      }
      expect(() => hillFromProfile(cut)).not.toThrow();
    }
  });
});

describe('simplifyProfile', () => {
  test('a road of a few pieces, told in a thousand points, comes back as those pieces', () => {
    const road = profileFrom([
      [600, 48],
      [900, 90],
      [300, -18],
      [700, 70],
    ]);
    const fine = Float64Array.from({ length: 1001 }, (_, i) => i * 2.5);
    const heightAt = (place: number): number => {
      const k = Math.max(
        1,
        road.distance.findIndex((here) => here >= place),
      );
      const [a = 0, b = 0] = [road.distance[k - 1], road.distance[k]];
      const [low = 0, high = 0] = [road.height[k - 1], road.height[k]];
      return low + ((place - a) / (b - a)) * (high - low);
    };
    const full = { distance: fine, height: fine.map(heightAt) };
    const simple = simplifyProfile(full, 40);
    expect([...simple.distance]).toEqual([0, 600, 1500, 1800, 2500]);
    for (const [k, height] of simple.height.entries()) expect(height).toBeCloseTo([0, 48, 138, 120, 190][k] ?? 0, 9);
    expect(profileError(full, simple).largest).toBeLessThan(1e-9);
  });

  test('two pieces of a tent with a small dent keep its top', () => {
    const tent = profileFrom([
      [500, 50],
      [500, 50],
      [100, -3],
      [900, -60],
    ]);
    expect([...simplifyProfile(tent, 2).distance]).toEqual([0, 1000, 2000]);
    expect([...simplifyProfile(tent, 1).distance]).toEqual([0, 2000]);
  });

  test('keeps ends and totals exactly, has no more pieces than asked, none too short or too steep', () => {
    const r = random(522);
    for (let i = 0; i < 150; i++) {
      const full = anyProfile(r);
      const pieces = r.whole(1, 40);
      const simple = simplifyProfile(full, pieces);
      expect(simple.distance.length - 1).toBeLessThanOrEqual(pieces);
      expect([simple.distance[0], simple.height[0]]).toEqual([0, 0]);
      expect(simple.distance.at(-1)).toBe(full.distance.at(-1));
      expect(simple.height.at(-1)).toBe(full.height.at(-1));
      const made = piecesOf(simple);
      if (made.length > 1) for (const { way } of made) expect(way).toBeGreaterThanOrEqual(20);
      for (const { grade } of made) expect(Math.abs(grade)).toBeLessThan(0.6);
    }
  });

  test('a wall is not a piece', () => {
    const walled = profileFrom([
      [300, 20],
      [25, 18],
      [300, 20],
    ]);
    const simple = simplifyProfile(walled, 10);
    for (const { grade } of piecesOf(simple)) expect(Math.abs(grade)).toBeLessThan(0.6);
    expect(simple.height.at(-1)).toBe(58);
  });

  test('more pieces never fit worse, and no other choice of as many points fits better', () => {
    const r = random(523);
    for (let i = 0; i < 30; i++) {
      const full = anyProfile(r, r.whole(10, 200));
      const errors = [1, 2, 4, 8, 16, 32].map((pieces) => profileError(full, simplifyProfile(full, pieces)).rms);
      for (const [k, error] of errors.entries())
        if (k > 0) expect(error).toBeLessThanOrEqual((errors[k - 1] ?? 0) + 1e-6);
      // against points picked by chance
      const least = profileError(full, simplifyProfile(full, 4)).rms;
      for (let trial = 0; trial < 50; trial++) {
        const last = full.distance.length - 1;
        const kept = [
          0,
          ...[r.whole(1, last - 1), r.whole(1, last - 1), r.whole(1, last - 1)].sort((a, b) => a - b),
          last,
        ];
        const points = kept.filter((point, k) => point !== kept[k - 1]);
        const other = {
          distance: Float64Array.from(points, (k) => full.distance[k] ?? 0),
          height: Float64Array.from(points, (k) => full.height[k] ?? 0),
        };
        if (piecesOf(other).some(({ way }) => way < 20)) continue;
        expect(profileError(full, other).rms).toBeGreaterThan(least - 1e-6);
      }
    }
  });

  test('of 250 points those are kept with the least squared error that there is', () => {
    const r = random(525);
    for (let i = 0; i < 6; i++) {
      // rough enough that the least error is not where points stand out most
      const full = anyProfile(r, 250);
      const { distance, height } = full;
      const at = (column: Float64Array, k: number): number => column[k] ?? Number.NaN;
      /** ∫ (height − chord)² ds from one point to another, piece by piece */
      const errorOf = (a: number, b: number): number => {
        const slope = (at(height, b) - at(height, a)) / (at(distance, b) - at(distance, a));
        const off = (k: number): number => at(height, k) - at(height, a) - slope * (at(distance, k) - at(distance, a));
        let sum = 0;
        for (let k = a; k < b; k++)
          sum += ((at(distance, k + 1) - at(distance, k)) / 3) * (off(k) ** 2 + off(k) * off(k + 1) + off(k + 1) ** 2);
        return sum;
      };
      const last = distance.length - 1;
      // least error up to each point in so many pieces of 20 m or more
      let least = Array.from({ length: last + 1 }, (_, k) => (k === 0 ? 0 : Number.POSITIVE_INFINITY));
      let best = Number.POSITIVE_INFINITY;
      for (let n = 0; n < 6; n++) {
        const next = least.map(() => Number.POSITIVE_INFINITY);
        for (let b = 1; b <= last; b++)
          for (let a = 0; a < b; a++)
            if (least[a] !== Number.POSITIVE_INFINITY && at(distance, b) - at(distance, a) >= 20)
              next[b] = Math.min(next[b] ?? 0, (least[a] ?? 0) + errorOf(a, b));
        least = next;
        best = Math.min(best, least[last] ?? 0);
      }
      const { rms } = profileError(full, simplifyProfile(full, 6));
      expect(rms).toBeCloseTo(Math.sqrt(best / at(distance, last)), 6);
    }
  });

  test('a ride along 40 pieces of the invented hill takes as long as along all of them, within 0.2 %', () => {
    for (const sensor of ['exact', 'barometer', 'positions'] as const)
      for (const speed of [1.5, 5]) {
        const { distance, elevation } = exampleRecording(speed, sensor, speed);
        const height = smoothElevation(distance, elevation, 100, []);
        const full = cutProfile(distance, height, [], 0, distance.length - 1);
        const simple = simplifyProfile(full, 40);
        const { largest, rms } = profileError(full, simple);
        // heights from positions wander by metres within 100 m, which forty pieces cannot follow; a barometer’s road is told to decimetres
        const isRoad = sensor !== 'positions';
        expect(largest).toBeLessThan(isRoad ? 0.4 : 2.5);
        expect(rms).toBeLessThan(isRoad ? 0.1 : 0.6);
        for (const motorPower of [0, 400]) {
          const timeOf = (profile: Profile): number =>
            rideProfile({ ...PLAIN, motorPower, assistLimit: 25 / 3.6, hill: hillFromProfile(profile) }, {}).time;
          expect(relative(timeOf(simple), timeOf(full))).toBeLessThan(isRoad ? 0.002 : 0.015);
        }
      }
  });

  test('a whole shorter than the shortest piece is one piece', () => {
    const short = profileFrom([
      [6, 1],
      [6, 0],
    ]);
    expect([...simplifyProfile(short, 10).distance]).toEqual([0, 12]);
    expect([...simplifyProfile(short, 0).distance]).toEqual([0, 12]);
  });
});

describe('profileError', () => {
  test('a triangle of 3 m between two points', () => {
    // heights off by 3 m at 100 m of 300 m: mean square of a triangle is a third of its height’s square
    const full = profileFrom([
      [100, 13],
      [200, 17],
    ]);
    const error = profileError(full, profileFrom([[300, 30]]));
    expect(error.largest).toBeCloseTo(3, 12);
    expect(error.rms).toBeCloseTo(3 / Math.sqrt(3), 12);
    expect(profileError(full, full)).toEqual({ largest: 0, rms: 0 });
  });
});
