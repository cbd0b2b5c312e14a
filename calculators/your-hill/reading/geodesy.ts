import geodesic from 'geographiclib-geodesic';

const { Geodesic } = geodesic;

/**
 * Shortest distance in metres between two places on the WGS 84 ellipsoid; latitudes and longitudes in degrees. Error below 15 nm of the
 * ellipsoid's geometry, whatever the places. A road is longer: it climbs and bends between its points.
 * Source: Karney 2013, Algorithms for geodesics, J. Geodesy 87:43-55, in the author's own library.
 */
export function distanceBetween(latitude: number, longitude: number, latitude2: number, longitude2: number): number {
  if (latitude === latitude2 && longitude === longitude2) return 0;
  return Geodesic.WGS84.Inverse(latitude, longitude, latitude2, longitude2, Geodesic.DISTANCE).s12 ?? Number.NaN;
}
