import type { Kind } from '../quantities/index.ts';
import { PACK_KNOWN } from './doubts.ts';
import type { CalculatorName } from './schema.ts';

/** A result in the public vocabulary of `<output>` elements. */
export interface ResultName {
  name: string;
  kind: Kind;
  perBike?: boolean;
  meaning: string;
}

const perBike = (name: string, kind: Kind, meaning: string): ResultName => ({ name, kind, perBike: true, meaning });
const once = (name: string, kind: Kind, meaning: string): ResultName => ({ name, kind, meaning });

const LIMITS = 'none, assist-limit, battery, heat';
const binding = (kindOf: typeof once, literals: string): ResultName[] => [
  kindOf('binds', 'text', `What costs the most time: ${literals}.`),
  kindOf('binds-after', 'duration', 'Time from the bottom until it does.'),
  kindOf('binds-height', 'height', 'Height climbed until then.'),
  kindOf('time-lost', 'duration', 'Time that it costs.'),
];
const endurance = once('endurance-time', 'duration', 'How long the rider lasts at the power held.');

const battery = (kindOf: typeof once): ResultName[] => [
  kindOf('battery-energy', 'energy', 'Energy drawn from the battery.'),
  kindOf('battery-share', 'percent', 'That energy as a share of the nominal energy.'),
];

/** Every result that each calculator gives. `/reference/links/` prints it, and a test holds the outcomes against it. */
export const resultNames: Readonly<Record<CalculatorName, readonly ResultName[]>> = {
  'climb-time': [
    once('time', 'duration', 'Time to the top.'),
    once('speed', 'speed', 'Speed along the road.'),
    once('vertical-speed', 'climb-rate', 'Height gained per time.'),
    once('grade', 'grade', 'Mean grade of the hill (tan).'),
    once('crank-power', 'power', 'Power of rider and motor at the crank.'),
    once('power-gravity', 'power', 'Part that lifts rider and bike.'),
    once('power-rolling', 'power', 'Part that tyres and bearings take.'),
    once('power-air', 'power', 'Part that the air takes.'),
    once('power-drive', 'power', 'Part lost between crank and wheel.'),
    once('watts-per-kilogram', 'specific-power', 'Rider power over body and kit.'),
    once('rider-energy', 'energy', 'Work of the rider at the crank.'),
    ...battery(once),
    once('motor-power', 'power', 'Mean output of the motor at the crank on this climb.'),
    ...binding(once, `${LIMITS}, torque, support or endurance`),
    once('limit-power', 'power', 'Motor power that the speed of the assist limit takes on this hill.'),
    endurance,
  ],
  'side-by-side': [
    perBike('time', 'duration', 'Time to the top.'),
    perBike('gap', 'duration', 'Time behind the fastest.'),
    perBike('distance-behind', 'distance', 'Distance still to ride when the fastest is up.'),
    perBike('height-behind', 'height', 'Height still to climb then.'),
    perBike('speed', 'speed', 'Speed along the road.'),
    perBike('motor-power', 'power', 'Mean output of the motor at the crank on this hill.'),
    ...battery(perBike),
    ...binding(perBike, `${LIMITS} or endurance`),
    endurance,
  ],
  'bigger-hill': [
    perBike('time', 'duration', 'Modelled time on the other hill.'),
    perBike('time-proportional', 'duration', 'Measured time × ratio of heights.'),
    perBike('gap', 'duration', 'Time behind the fastest on the other hill.'),
    perBike('motor-power', 'power', 'Mean output of the motor on the measured hill.'),
    perBike(
      'motor-held',
      'power',
      'Output before the fade of the assist limit; with `data-low` alone where only a lower bound is known.',
    ),
    perBike('speed', 'speed', 'Speed on the other hill.'),
    ...battery(perBike),
    ...binding(perBike, `${LIMITS}, endurance or grade (too different for multiplying)`),
    endurance,
    once('rolling', 'ratio', 'C_rr of the measured hill.'),
    once('grade', 'grade', 'Mean grade of the measured hill (tan).'),
    once('target-grade', 'grade', 'Mean grade of the other hill (tan).'),
  ],
  'power-to-weight': [
    once('watts-per-kilogram', 'specific-power', 'Rider power over body and kit.'),
    once('watts-per-kilogram-assisted', 'specific-power', 'Rider and motor over body and kit.'),
    once('watts-per-kilogram-system', 'specific-power', 'Rider and motor over all that moves.'),
    once(
      'watts-per-kilogram-unassisted-equivalent',
      'specific-power',
      'Rider power, over body and kit, that climbs as fast on the same bike with the motor off.',
    ),
    once('time-per-kilogram', 'seconds', 'Time that one more kilogram costs on this hill.'),
  ],
  'torque-at-cadence': [
    perBike('motor-power', 'power', 'Output of the motor at this cadence and rider power, at the crank.'),
    perBike('torque-limit', 'power', 'Power that its torque makes at this cadence.'),
    perBike('support-limit', 'power', 'Power that its support adds to this rider power.'),
    perBike(
      'torque-cadence',
      'cadence',
      'Cadence from which its torque no longer limits it at this rider power, in rpm.',
    ),
    perBike('rider-for-peak', 'power', 'Least rider power that brings out its peak.'),
    perBike('binds', 'text', 'The least of the three: torque, support or peak.'),
  ],
  'gears-and-restart': [
    once(
      'steepest-held',
      'grade',
      'Steepest grade (tan) that rider and motor hold in the lowest gear at that power and cadence.',
    ),
    once('steepest-restart', 'grade', 'Steepest grade on which the first push and the motor start the bike.'),
    once('steepest-motor', 'grade', 'Steepest grade that the motor at the crank holds alone.'),
    once('rider-alone', 'grade', 'Steepest grade that the rider holds without the motor.'),
    once('steepest-hub-held', 'grade', 'Steepest grade that rider and a hub motor of the same torque hold.'),
    once(
      'steepest-hub-restart',
      'grade',
      'Steepest grade on which the first push and such a hub motor start the bike.',
    ),
    once('steepest-hub', 'grade', 'Steepest grade that such a hub motor holds alone.'),
    once('wheel-torque', 'torque', 'Torque of the motor at the wheel in the lowest gear.'),
    once('wheel-force', 'force', 'Force at the ground of rider and motor in the lowest gear.'),
    once('force-needed', 'force', 'Force that holds the ramp.'),
    once('speed', 'speed', 'Speed at that cadence in the lowest gear.'),
    once('verdict', 'text', 'Of the ramp: holds-and-restarts, holds or too-steep.'),
  ],
  'holding-peak-power': [
    once('hold-time', 'duration', 'Time for which the motor holds its peak until heat limits it.'),
    once('hold-time-lower-gear', 'duration', 'The same at a cadence 10 rpm higher, in a lower gear.'),
    once('torque-ratio', 'percent', 'Torque at the peak over the torque held for ever.'),
    once('final-rise', 'percent', 'Rise of temperature that the peak would come to, over the permitted one.'),
    once('held-power', 'power', 'Motor output that heat allows for ever at this cadence, at most the peak.'),
    once('mean-power', 'power', 'Mean output of the motor on this climb.'),
    once('time', 'duration', 'Time to the top.'),
    once('time-cold', 'duration', 'The same if heat never limited the motor.'),
    once('time-lost', 'duration', 'Time that heat costs on this climb.'),
    once('limit-height', 'height', 'Height at which heat limits the motor on this hill.'),
    once('limit-distance', 'distance', 'Distance from the bottom to there.'),
    once('limit-time', 'duration', 'Time from the bottom to there.'),
    once('binds', 'text', 'The limit that binds: none, heat or assist-limit.'),
  ],
  'watt-hours': [
    once('climbs', 'count', 'Times up this hill on one charge.'),
    once('energy-per-climb', 'energy', 'Energy that one climb takes from the battery with help to the top.'),
    once('needed-energy', 'energy', 'The same for all climbs.'),
    once('battery-energy', 'energy', 'Energy drawn from the battery: that, or all that can be used.'),
    once('battery-share', 'percent', 'That energy as a share of the nominal energy.'),
    once('nominal-energy', 'energy', 'Nominal energy of the battery and its add-on.'),
    once('usable-energy', 'energy', 'What age, cold and reserve leave of it.'),
    once('battery-left', 'percent', 'Share of the usable energy that is left at the last top.'),
    once('empty-at', 'height', 'Height climbed, all climbs together, until the battery is empty.'),
    once('empty-distance', 'distance', 'Distance ridden up until then.'),
    once('empty-lap', 'count', 'The climb on which that is, from 1.'),
    once('time', 'duration', 'Time of all climbs, without help once the battery is empty.'),
    once('time-without-help', 'duration', 'Part of it that is ridden without help.'),
    once('energy-per-distance', 'energy-per-distance', 'Energy that is needed over the distance ridden up.'),
    once('lift-energy', 'energy', 'Energy that lifts rider and bike, all climbs together.'),
    once('rider-share', 'percent', 'Share of the work at the crank that legs do.'),
    once('watts-per-kilogram', 'specific-power', 'Rider power over body and kit.'),
    once(
      'watts-per-kilogram-unassisted-equivalent',
      'specific-power',
      'Rider power, over body and kit, that climbs as fast on the same bike with the motor off.',
    ),
    once(
      'gauge-energy',
      'energy',
      'Energy between the two readings of the gauge. `data-low` and `data-high` are limits: half a step at each.',
    ),
    once('gauge-energy-per-distance', 'energy-per-distance', 'The same over the distance ridden up.'),
    once(
      'implied-efficiency',
      'percent',
      `Work of the motor over that energy. \`data-low\` and \`data-high\` are limits: the readings, and a pack known to ${100 * PACK_KNOWN} %.`,
    ),
    once('binds', 'text', 'The limit that binds: none, battery or assist-limit.'),
  ],
  'keep-up': [
    once('rider-needed', 'power', 'Rider power that takes the companion’s time with this motor.'),
    once('rider-needed-per-kilogram', 'specific-power', 'That power over body and kit.'),
    once('motor-needed', 'power', 'Motor output that takes it at the rider power held.'),
    once('class-needed', 'text', 'The class of bike that gives it: none, light, mid, full or beyond.'),
    once('time', 'duration', 'Time to the top with the power held.'),
    once('companion-time', 'duration', 'Time of the companion.'),
    once('gap', 'duration', 'Time behind the companion; negative: ahead.'),
    once('companion-speed', 'speed', 'Speed of the companion along the road.'),
    once('motor-power', 'power', 'What of the motor comes through at the companion’s speed.'),
    once('endurance-time', 'duration', 'How long the rider lasts at `rider-needed`.'),
    once('limit-power', 'power', 'Motor output that this hill takes at the assist limit, beside the rider’s power.'),
    once('limit-time', 'duration', 'Time at the speed of the assist limit: no motor is faster.'),
    once('binds', 'text', 'The limit that binds at the companion’s speed: none, assist-limit or battery.'),
  ],
  'what-changes-it': [
    once('time', 'duration', 'Time to the top as it is.'),
    once('change-mass-time', 'seconds', 'Time that the change of mass adds; negative: saves.'),
    once('change-rolling-time', 'seconds', 'The same for rolling resistance.'),
    once('change-power-time', 'seconds', 'The same for rider power.'),
    once('change-motor-time', 'seconds', 'The same for motor power.'),
    once('change-wind-time', 'seconds', 'The same for head wind.'),
    once('change-altitude-time', 'seconds', 'The same for altitude: the air alone, not what it does to the rider.'),
    once('all-changes-time', 'seconds', 'All changes at once.'),
    once('lift-energy', 'energy', 'Energy that lifts the change of mass to the top.'),
  ],
  plan: [
    once('repeats', 'count', 'Fewest runs of each bike that find the difference with the chance that is wanted.'),
    once('repeats-planned', 'count', 'Runs of each bike in the plan: those, or as many as `repeats` says.'),
    once('runs', 'count', 'All runs of the plan, control runs included.'),
    once('chance', 'percent', 'Chance that the plan finds the difference that matters.'),
    once(
      'detectable-difference',
      'seconds',
      'Difference between two of the slowest bikes that it finds with the chance that is wanted.',
    ),
    once('detectable-power', 'power', 'The same as power at the crank.'),
    once('detectable-difference-all', 'seconds', 'The same where every pair of bikes is judged at once.'),
    once('least-difference', 'seconds', 'Difference below which no number of runs finds it with that chance.'),
    once('repeats-for-gaps', 'count', 'Fewest runs of each that show every gap between the expected times.'),
    once('scatter', 'percent', 'Half-width at 95 % of one run, of total power, meter and stopwatch included.'),
    once('scatter-time', 'seconds', 'The same in time, of the slowest bike.'),
    once('control-time', 'duration', 'Expected time of a control run.'),
    once('ends-at', 'duration', 'Time of the day, from midnight, at which the last run is back at the foot.'),
    once('runs-in-light', 'count', 'Runs that are back before last light.'),
    once(
      'repeats-in-light',
      'count',
      'Runs of each bike, at most those planned, that fit in with all control runs before last light.',
    ),
    once('detectable-in-light', 'seconds', 'Difference that these find.'),
    once(
      'legs-lowest',
      'percent',
      'Least share of `endurance-work` left at any time; negative where the legs do not last.',
    ),
    once('power-lasting', 'power', 'Highest target power at which they last.'),
    once('rest-lasting', 'duration', 'Shortest cool-down with which they last at the target power.'),
    once('rider-work', 'work', 'Work of the rider at the crank on all runs.'),
    perBike('time', 'duration', 'Expected time to the top.'),
    perBike('gap', 'duration', 'Expected time behind the next faster bike.'),
    perBike('gap-chance', 'percent', 'Chance that the plan shows that gap.'),
    perBike('repeats-for-gap', 'count', 'Fewest runs of each that show its gap to the nearest bike.'),
    perBike('motor-power', 'power', 'Mean output of the motor at the crank.'),
    perBike('battery-energy', 'energy', 'Energy that one run takes from the battery.'),
    perBike('battery-left', 'percent', 'Share of the battery left after the last run.'),
    perBike('swaps', 'count', 'How often a full battery is needed on the way.'),
  ],
};
