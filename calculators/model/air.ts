import { ASSUMED_HUMIDITY, GRAVITY } from './constants.ts';

/** ISO 2533:1975 (ICAO to 32 km), defining constants as quoted in the bibliography entry `iso-2533`. */
const ISA = {
  temperature: 288.15, // K at sea level
  pressure: 101_325, // Pa at sea level
  lapse: 0.0065, // K/m
  gas: 287.05287, // J/(kg K), dry air
  earthRadius: 6_356_766, // m, for geometric to geopotential height
};

/**
 * State of the standard atmosphere at a geometric altitude in metres.
 * Troposphere only. Source: ISO 2533:1975.
 * @returns temperature K, pressure Pa, density kg/m³
 * @throws RangeError outside −5,000 to 11,000 m
 */
export function standardAtmosphere(altitude: number): { temperature: number; pressure: number; density: number } {
  if (!(altitude >= -5000 && altitude <= 11_000))
    throw new RangeError('The standard atmosphere is known here from −5,000 to 11,000 m.');
  const geopotential = (ISA.earthRadius * altitude) / (ISA.earthRadius + altitude);
  const temperature = ISA.temperature - ISA.lapse * geopotential;
  const pressure = ISA.pressure * (temperature / ISA.temperature) ** (GRAVITY / (ISA.gas * ISA.lapse));
  return { temperature, pressure, density: pressure / (ISA.gas * temperature) };
}

/**
 * Density of moist air, kg/m³, by CIPM-2007 (Picard et al., Metrologia 45:149, 2008), with 400 ppm of CO₂.
 * Recommended for 600 to 1,100 hPa and 15 to 27 °C; beyond that it errs by about 1e-4, far below anything a climb can show.
 * @param pressure Pa
 * @param temperature °C
 * @param humidity relative, 0 to 1
 */
export function moistAirDensity(pressure: number, temperature: number, humidity: number): number {
  const t = temperature;
  const T = t + 273.15;
  const saturation = Math.exp(1.2378847e-5 * T * T - 1.9121316e-2 * T + 33.93711047 - 6.3431645e3 / T);
  const enhancement = 1.00062 + 3.14e-8 * pressure + 5.6e-7 * t * t;
  const x = (humidity * enhancement * saturation) / pressure; // mole fraction of water vapour
  const pT = pressure / T;
  const compressibility =
    1 -
    pT *
      (1.58123e-6 -
        2.9331e-8 * t +
        1.1043e-10 * t * t +
        (5.707e-6 - 2.051e-8 * t) * x +
        (1.9898e-4 - 2.376e-6 * t) * x * x) +
    pT * pT * (1.83e-11 - 0.765e-8 * x * x);
  const dryMolarMass = 28.96546e-3;
  const waterMolarMass = 18.01528e-3;
  return ((pressure * dryMolarMass) / (compressibility * 8.314472 * T)) * (1 - x * (1 - waterMolarMass / dryMolarMass));
}

/**
 * Air density, kg/m³, on a hill of which only altitude (m) and temperature (°C) are known:
 * pressure of the standard atmosphere, density by CIPM-2007 at half humidity.
 */
export function airDensity(altitude: number, temperature: number): number {
  return moistAirDensity(standardAtmosphere(altitude).pressure, temperature, ASSUMED_HUMIDITY);
}
