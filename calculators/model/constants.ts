/** Standard gravity, m/s² (exact, 3rd CGPM 1901; value from memory). Local gravity differs by about 0.3 %, half a per cent on the highest roads near the equator. */
export const GRAVITY = 9.80665;

/** Wheel bearings, N and N per m/s: Martin et al. 1998, `v (91 + 8.7 v) 1e-3` W (value from memory). */
export const BEARINGS_CONSTANT = 0.091;
export const BEARINGS_PER_SPEED = 0.0087;

/** Extra drag area of spinning wheels, m²: Martin et al. 1998 (value from memory). Zero on the site, where a field C_dA already holds it. */
export const WHEEL_DRAG_AREA = 0.0044;

/** Width below the assist limit over which the motor fades to nothing, m/s (2 km/h: an assumption; the law asks only for "progressively"). */
export const FADE_WIDTH = 2 / 3.6;

/** Relative humidity assumed when only altitude and temperature are known. Dry or soaked air changes the density by less than 1 %. */
export const ASSUMED_HUMIDITY = 0.5;
