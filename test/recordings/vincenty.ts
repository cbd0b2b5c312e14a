/*
 * Distance on an ellipsoid by the iteration of Vincenty 1975, Survey Review 23(176):88-93 (formulas from memory, held against the published
 * geodesics in the tests): another method than the one of the library, good to about half a millimetre.
 */

export interface Ellipsoid {
  /** m, the longer half axis */
  a: number;
  /** flattening */
  f: number;
}

export const WGS84: Ellipsoid = { a: 6_378_137, f: 1 / 298.257223563 };
export const GRS80: Ellipsoid = { a: 6_378_137, f: 1 / 298.257222101 };

export function vincenty(
  latitude1: number,
  longitude1: number,
  latitude2: number,
  longitude2: number,
  { a, f }: Ellipsoid = WGS84,
): number {
  const radians = Math.PI / 180;
  const b = a * (1 - f);
  const L = (longitude2 - longitude1) * radians;
  const U1 = Math.atan((1 - f) * Math.tan(latitude1 * radians));
  const U2 = Math.atan((1 - f) * Math.tan(latitude2 * radians));
  const [sinU1, cosU1, sinU2, cosU2] = [Math.sin(U1), Math.cos(U1), Math.sin(U2), Math.cos(U2)];
  let lambda = L;
  for (let i = 0; i < 200; i++) {
    const sinLambda = Math.sin(lambda);
    const cosLambda = Math.cos(lambda);
    const sinSigma = Math.hypot(cosU2 * sinLambda, cosU1 * sinU2 - sinU1 * cosU2 * cosLambda);
    if (sinSigma === 0) return 0;
    const cosSigma = sinU1 * sinU2 + cosU1 * cosU2 * cosLambda;
    const sigma = Math.atan2(sinSigma, cosSigma);
    const sinAlpha = (cosU1 * cosU2 * sinLambda) / sinSigma;
    const cos2Alpha = 1 - sinAlpha * sinAlpha;
    const cos2SigmaM = cos2Alpha === 0 ? 0 : cosSigma - (2 * sinU1 * sinU2) / cos2Alpha;
    const C = (f / 16) * cos2Alpha * (4 + f * (4 - 3 * cos2Alpha));
    const before = lambda;
    lambda =
      L +
      (1 - C) * f * sinAlpha * (sigma + C * sinSigma * (cos2SigmaM + C * cosSigma * (2 * cos2SigmaM * cos2SigmaM - 1)));
    if (Math.abs(lambda - before) > 1e-12) continue;
    const u2 = (cos2Alpha * (a * a - b * b)) / (b * b);
    const A = 1 + (u2 / 16_384) * (4096 + u2 * (-768 + u2 * (320 - 175 * u2)));
    const B = (u2 / 1024) * (256 + u2 * (-128 + u2 * (74 - 47 * u2)));
    const deltaSigma =
      B *
      sinSigma *
      (cos2SigmaM +
        (B / 4) *
          (cosSigma * (2 * cos2SigmaM * cos2SigmaM - 1) -
            (B / 6) * cos2SigmaM * (4 * sinSigma * sinSigma - 3) * (4 * cos2SigmaM * cos2SigmaM - 3)));
    return b * A * (sigma - deltaSigma);
  }
  return Number.NaN;
}

/** m on a sphere of the Earth’s mean radius. */
export function haversine(latitude1: number, longitude1: number, latitude2: number, longitude2: number): number {
  const radians = Math.PI / 180;
  const h =
    Math.sin(((latitude2 - latitude1) * radians) / 2) ** 2 +
    Math.cos(latitude1 * radians) *
      Math.cos(latitude2 * radians) *
      Math.sin(((longitude2 - longitude1) * radians) / 2) ** 2;
  return 2 * 6_371_008.8 * Math.asin(Math.sqrt(h));
}
