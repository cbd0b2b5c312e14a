/** Energy in J drawn from the battery when the motor gives `motorPower` (W at the crank) for `time` (s) through a drive unit of that efficiency. */
export function batteryEnergy(motorPower: number, time: number, driveUnitEfficiency: number): number {
  return motorPower > 0 ? (motorPower * time) / driveUnitEfficiency : 0;
}

/** Power, W, drawn from the battery: the motor's through the drive unit, and what display, controller and lights take. */
export function drawnPower(motorPower: number, driveUnitEfficiency: number, idle: number): number {
  return (motorPower > 0 ? motorPower / driveUnitEfficiency : 0) + idle;
}

/** What is left of a nominal energy; shares from 0 to 1. */
export interface Condition {
  /** capacity now over capacity when new */
  health: number;
  /** what the cold leaves */
  cold: number;
  /** what the rider keeps */
  reserve: number;
}

/** Energy, J, that a rider can use of a nominal one: age and cold take their share, a reserve is kept. */
export function usableEnergy(nominal: number, { health, cold, reserve }: Condition): number {
  return nominal * health * cold * (1 - reserve);
}

/** Time, s, until `usable` (J) is drawn at `drawn` (W). Infinity where nothing is drawn. */
export function emptyAfter(usable: number, drawn: number): number {
  return drawn > 0 ? usable / drawn : Number.POSITIVE_INFINITY;
}

/** A value with the limits (not a 95 % range) that readings allow. */
export interface Limits {
  value: number;
  low: number;
  high: number;
}

/**
 * Energy, J, used between two gauge readings. A gauge shows percent of what the full battery gives (`full`, J), and each reading may be
 * off by half a `step`; so the limits are a whole step apart on either side, and never below zero.
 * @param start shares of 1, `start` the reading before
 * @param known relative half-width to which `full` is known
 */
export function gaugeEnergy(full: number, start: number, end: number, step: number, known = 0): Limits {
  const used = start - end;
  return {
    value: full * used,
    low: full * (1 - known) * Math.max(0, used - step),
    high: full * (1 + known) * Math.min(1, used + step),
  };
}

/** Efficiency from battery to crank that follows from work at the crank (J) and gauge energy. `high` is Infinity where the gauge may have used nothing. */
export function impliedEfficiency(motorWork: number, gauge: Limits): Limits {
  return { value: motorWork / gauge.value, low: motorWork / gauge.high, high: motorWork / gauge.low };
}
