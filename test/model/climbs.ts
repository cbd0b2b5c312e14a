import {
  type Climb,
  FADE_WIDTH,
  type Hill,
  hillFromGrade,
  hillFromProfile,
  type Reserves,
  rideClimb,
} from '../../calculators/model/index.ts';
import type { Random } from '../random.ts';

/** A plain climb to change one thing of: 2.4 km at 9.8 %, invented. */
export const PLAIN: Readonly<Climb> = Object.freeze({
  hill: hillFromGrade(2400, 0.098),
  mass: 102,
  rolling: 0.028,
  dragArea: 0.45,
  density: 1.16,
  headWind: 0,
  efficiency: 0.96,
  riderPower: 170,
  motorPower: 380,
  assistLimit: null,
});

/** Any climb that somebody might ride: falling and rising, in any wind, with any limit. */
export function anyClimb(r: Random): Climb {
  return {
    hill: hillFromGrade(r.between(50, 30_000), r.between(-0.2, 0.35)),
    mass: r.between(40, 250),
    rolling: r.between(0.001, 0.1),
    dragArea: r.between(0.15, 1),
    density: r.between(0.8, 1.4),
    headWind: r.between(-15, 15),
    efficiency: r.between(0.8, 1),
    riderPower: r.between(1, 600),
    motorPower: r.chance(0.2) ? 0 : r.between(0, 1200),
    assistLimit: r.chance(0.3) ? null : r.between(3, 15),
  };
}

/** The same, going up in still air or a wind, so that it is a climb. */
export function anyAscent(r: Random): Climb {
  return { ...anyClimb(r), hill: hillFromGrade(r.between(50, 30_000), r.between(0.001, 0.35)) };
}

/** A climb whose motor may be bound by anything: torque at a cadence, the lowest gear, support, the assist limit. */
export function anyBoundAscent(r: Random): Climb {
  const climb = anyAscent(r);
  return {
    ...climb,
    headWind: r.between(-3, 5),
    fadeWidth: r.chance(0.5) ? FADE_WIDTH : r.between(0.1, 3),
    support: r.chance(0.4) ? undefined : r.between(0, 5),
    torque: r.chance(0.3) ? undefined : r.between(10, 120),
    cadence: r.chance(0.3) ? undefined : r.between(40, 100),
    gear: r.chance(0.4) ? undefined : { wheelRadius: r.between(0.25, 0.38), turns: r.between(0.5, 2) },
  };
}

/** What it can use up on the way: nothing, heat, battery or both, each often enough to end before the top. */
export function anyReserves(r: Random, climb: Climb): Reserves {
  const { time, motorPower } = rideClimb(climb);
  return {
    battery: r.chance(0.3)
      ? undefined
      : {
          energy: r.between(0, 2) * motorPower * time,
          unitEfficiency: r.between(0.5, 0.95),
          idle: r.chance(0.3) ? 0 : r.between(0, 15),
        },
    heat: r.chance(0.3)
      ? undefined
      : {
          continuous: r.between(0.3, 1.2) * motorPower + 1,
          continuousCadence: r.between(50, 90),
          timeConstant: r.between(0.1, 2) * time,
          fixedLosses: r.chance(0.3) ? 0 : r.between(0, 2),
          rise: r.pick([0, 0, 0, r.between(0, 1), 1]),
        },
  };
}

/** A hill from its pieces: length, m, and grade (tan) of each. */
export function hillOfPieces(pieces: readonly (readonly [length: number, grade: number])[]): Hill {
  const distance = [0];
  const height = [0];
  for (const [length, grade] of pieces) {
    distance.push((distance.at(-1) as number) + length);
    height.push((height.at(-1) as number) + (length * grade) / Math.hypot(1, grade));
  }
  return hillFromProfile({ distance: Float64Array.from(distance), height: Float64Array.from(height) });
}

/** Any hill of so many pieces. */
export function anyHill(r: Random, pieces: number, [low, high] = [-0.08, 0.2], [short, long] = [20, 800]): Hill {
  return hillOfPieces(
    Array.from({ length: pieces }, () => [r.between(short ?? 0, long ?? 0), r.between(low ?? 0, high ?? 0)] as const),
  );
}

/** A ride along any profile, with a motor that anything may bind, and whatever it may use up. */
export function anyRide(r: Random, pieces = r.whole(2, 12)): { climb: Climb; reserves: Reserves } {
  const climb = { ...anyBoundAscent(r), riderPower: r.between(60, 400), hill: anyHill(r, pieces) };
  const reserves = anyReserves(r, climb);
  const above = r.between(0, 0.3) * climb.riderPower;
  const { time } = rideClimb(climb);
  return {
    climb,
    reserves: {
      ...reserves,
      endurance: r.chance(0.5)
        ? undefined
        : { criticalPower: climb.riderPower - above, workAbove: r.between(0.1, 1.5) * above * time },
    },
  };
}
