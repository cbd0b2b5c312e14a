import { kilojoules, kmh, wattHours } from '../amounts.ts';
import type { Defaults, Section } from '../schema.ts';

/** Shared by every calculator. The hill and the bikes are invented; ranges and sources of the physical ones stand in `doubts.ts`. */
export const COMMON: Defaults = {
  distance: 2400,
  gain: 235,
  altitude: 500,
  temperature: 15,
  wind: 0,
  rolling: 0.028,
  drag: 0.45,
  drive: 0.96,
  unit: 0.8,
  rider: 82,
  power: 170,
  limit: kmh(25),
};

export const THREE_BIKES: Defaults = {
  name: ['Light', 'Mid', 'Full', 'Bike 4', 'Bike 5', 'Bike 6'],
  bike: [17, 21, 24, 22],
  motor: [280, 400, 560, 400],
  battery: [wattHours(360), wattHours(540), wattHours(720), wattHours(540)],
};

export const ONE_BIKE: Defaults = { name: 'Bike', bike: 20, motor: 380, battery: wattHours(540) };

export const HILL = { group: 'hill', names: ['distance', 'gain', 'grade'] } satisfies Section;
/** The same where a hill may also come piece by piece. */
export const HILL_OR_PROFILE = { ...HILL, folded: ['profile'] } satisfies Section;
export const RIDER = { group: 'rider', names: ['rider', 'power'] } satisfies Section;
export const CONDITIONS = {
  group: 'conditions',
  names: ['rolling'],
  folded: ['drag', 'drive', 'unit', 'altitude', 'temperature', 'wind'],
} satisfies Section;

/** How a motor warms up, where it is said what it holds: s, and fixed over copper losses. */
export const WARMING_UP: Defaults = { 'warm-up': 900, 'fixed-losses': 0.2 };

/** A rider who may tire, and a motor that may get hot: nothing is said of either unless the reader does. */
export const TIRING_RIDER = { ...RIDER, folded: ['endurance', 'endurance-work'] } satisfies Section;
export const WARM_MOTOR = { group: 'heat', names: [], folded: ['warm-up'] } satisfies Section;
export const LONG_CLIMB: Defaults = {
  'endurance-work': kilojoules(15),
  ...WARMING_UP,
  reserve: 0,
};
