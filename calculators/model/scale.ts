/** Time carried to a hill of another height the way people do it: time × gain ratio. Right at the same grade and surface, until something runs out. */
export function proportionalTime(time: number, gain: number, targetGain: number): number {
  return (time * targetGain) / gain;
}

/** A target grade further than a tenth from the measured one (both tan) is past what proportional scaling is good for. */
export function isGradeFar(grade: number, targetGrade: number): boolean {
  // exactly a tenth is not further, whatever its last bit says
  return Math.abs(targetGrade - grade) > 0.1 * Math.abs(grade) * (1 + 1e-9);
}
