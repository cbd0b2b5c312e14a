/*
 * Invents a ride over several hills, in the open ocean, and writes it as GPX. Its speed follows from its power, so that what a page reads
 * back from it can be held against what was put in. The balance is written out here once more, to be independent of the site's model.
 */

export interface Tour {
  /** of each piece: m of road and grade as rise over road */
  road: readonly (readonly [length: number, sin: number])[];
  /** W while the road does not fall */
  power: number;
  /** kg, everything */
  mass: number;
  rolling: number;
  /** share of points without power */
  powerless?: number;
}

export interface TourPoint {
  seconds: number;
  along: number;
  height: number;
  power: number | undefined;
}

/** Three climbs: 60 m, 130 m and 38 m high, with falls between them. */
export const THREE_HILLS: Tour = {
  road: [
    [600, 0.003],
    [1000, 0.06],
    [900, -0.05],
    [500, 0],
    [700, 0.08],
    [400, 0.045],
    [700, 0.08],
    [1500, -0.07],
    [400, 0.002],
    [950, 0.04],
    [600, -0.03],
  ],
  power: 220,
  mass: 92,
  rolling: 0.012,
};

/** m/s of slope, with drag area 0.45 m², air of 1.168 kg/m³ (500 m, 15 °C), 96 % from pedal to road, and bearings of 0.091 N + 0.0087 N·s/m. */
function speedOf({ power, mass, rolling }: Tour, sin: number): number {
  const slope = mass * 9.80665 * (sin + rolling * Math.sqrt(1 - sin * sin)) + 0.091;
  let [low, high] = [0.3, 15];
  while (high - low > 1e-9) {
    const v = (low + high) / 2;
    if (v * (slope + 0.0087 * v + 0.5 * 1.168 * 0.45 * v * v) > 0.96 * power) high = v;
    else low = v;
  }
  return low;
}

/** A point each second. */
export function ride(tour: Tour): TourPoint[] {
  const points: TourPoint[] = [];
  let [along, height, seconds] = [0, 120, 0];
  let [end, piece] = [tour.road[0]?.[0] ?? 0, 0];
  while (piece < tour.road.length) {
    const [, sin] = tour.road[piece] ?? [0, 0];
    const isWithout = (seconds % 100) / 100 < (tour.powerless ?? 0);
    points.push({ seconds, along, height, power: isWithout ? undefined : sin < -0.01 ? 0 : tour.power });
    const v = sin < -0.01 ? 11 : speedOf(tour, sin);
    along += v;
    height += v * sin;
    seconds += 1;
    while (along >= end && piece < tour.road.length) {
      piece += 1;
      end += tour.road[piece]?.[0] ?? Number.POSITIVE_INFINITY;
    }
  }
  return points;
}

/** m in a degree of latitude at 48.9° south (WGS 84), near enough for 10 km. */
const METRES_PER_DEGREE = 111_200;

/** `<trk>` of a tour, due north. */
const track = (points: readonly TourPoint[], name: string): string =>
  `<trk><name>${name}</name><trkseg>\n${points
    .map(
      ({ seconds, along, height, power }) =>
        `<trkpt lat="${(-48.9 + along / METRES_PER_DEGREE).toFixed(8)}" lon="-123.40000000"><ele>${height.toFixed(2)}</ele><time>${new Date(1_777_629_600_000 + 1000 * seconds).toISOString()}</time>${power === undefined ? '' : `<extensions><power>${power}</power></extensions>`}</trkpt>`,
    )
    .join('\n')}\n</trkseg></trk>`;

const route = (points: readonly TourPoint[], name: string): string =>
  `<rte><name>${name}</name>\n${points
    .filter((_, i) => i % 10 === 0)
    .map(
      ({ along, height }) =>
        `<rtept lat="${(-48.9 + along / METRES_PER_DEGREE).toFixed(8)}" lon="-123.40000000"><ele>${height.toFixed(2)}</ele></rtept>`,
    )
    .join('\n')}\n</rte>`;

/** GPX 1.1 of one ride, with a route before it where one is named. */
export function gpxOf(points: readonly TourPoint[], name = 'Three hills', routeName?: string): string {
  return `<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" creator="invented" xmlns="http://www.topografix.com/GPX/1/1">
${routeName === undefined ? '' : route(points, routeName)}
${track(points, name)}
</gpx>
`;
}
