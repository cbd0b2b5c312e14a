import { type Climb, hillFromGrade } from '../../calculators/model/index.ts';
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
