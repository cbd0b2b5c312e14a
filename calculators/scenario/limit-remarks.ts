import { type Climb, type Hill, heightAt, type Limit, motorBound, type StagedClimb } from '../model/index.ts';
import { formatQuantity, formatRange } from '../quantities/index.ts';
import { lengthOf, stretchesBound } from './binding.ts';
import type { Remark, Result } from './outcome.ts';
import { TOP_SPEED } from './parameters/profile.ts';
import { isGiven, optionalOf, type Scenario } from './scenario.ts';

/** A climb, and what holds it back on the way. */
export interface LimitedClimb {
  climb: Climb;
  ride: StagedClimb;
  limits: readonly Limit[];
}

/** What people call it to ride such a road from its bottom, or from where it begins. */
export const wayOf = ({ gain }: Hill): 'climb' | 'ride' | 'descent' =>
  gain > 0 ? 'climb' : gain < 0 ? 'descent' : 'ride';

/** A place on the way: by its height where the road climbs evenly, along a hill in pieces by both. */
export function placeOf(hill: Hill, distance: number, scenario: Scenario): string {
  const along = `${formatQuantity(distance, 'distance', scenario.system)} along`;
  if (!hill.profile && !(hill.gain > 0)) return along;
  const height = heightAt(hill, distance);
  const up = `${formatQuantity(Math.abs(height), 'height', scenario.system)} ${height < 0 ? 'down' : 'up'}`;
  return hill.profile ? `${along}, ${up}` : up;
}

/** A length of time in words: whole seconds while it is short. */
export function lasting(seconds: number): string {
  return formatQuantity(seconds, seconds < 59.5 ? 'seconds' : 'duration', 'metric', { digits: 0 });
}

/** Most stretches that a sentence names. */
const NAMED = 3;

/** On how much of a hill in pieces a limit binds, and where: "on 560 m of the way (1.01 to 1.38 km and 1.94 to 2.13 km along)"; empty where the hill is whole. */
export function partOfTheWay({ system }: Scenario, { climb, ride }: LimitedClimb, { limit }: Limit): string {
  const stretches = stretchesBound(ride, limit);
  if (stretches.length === 0) return '';
  const metres = lengthOf(stretches);
  if (metres > climb.hill.distance - 1) return ' all the way';
  const named = stretches.slice(0, NAMED).map(({ from, to }) => formatRange(from, to, 'distance', system));
  const more = stretches.length - named.length;
  const last = more > 0 ? `${more} more stretch${more > 1 ? 'es' : ''}` : named.length > 1 ? named.pop() : '';
  const places = `${named.join(', ')}${last && ` and ${last}`}`;
  return ` on ${formatQuantity(metres, 'distance', system)} of the way (${places}${more > 0 ? '' : ' along'})`;
}

/** That the assist limit holds a bike back, and what it would take without it where its ride is known. */
export function assistLimitRemark(
  scenario: Scenario,
  { climb, ride, limits }: Omit<LimitedClimb, 'ride'> & { ride: StagedClimb | undefined },
  who: string,
): Remark[] {
  if (climb.assistLimit === null) return [];
  const limit = limits.find((one) => one.limit === 'assist-limit');
  const speed = formatQuantity(climb.assistLimit, 'speed', scenario.system, { trim: true });
  const part = ride && limit ? partOfTheWay(scenario, { climb, ride, limits }, limit) : '';
  const free =
    ride && limit
      ? ` Without a limit it would take ${formatQuantity(ride.time - limit.lost, 'duration', scenario.system)}.`
      : '';
  return [{ tone: 'caution', text: `${who} is held back by the assist limit of ${speed}${part}.${free}` }];
}

/** What heat, an empty battery, torque and support do on the way up. The assist limit has sentences of its own. `who` begins a sentence. */
export function limitRemarks(scenario: Scenario, limited: LimitedClimb, who: string): Remark[] {
  const { climb, ride, limits } = limited;
  const text = (si: number, kind: Result['kind']): string => formatQuantity(si, kind, scenario.system, { trim: true });
  const rounded = (si: number, kind: Result['kind']): string => formatQuantity(si, kind, scenario.system);
  const where = ({ from }: Limit): string => placeOf(climb.hill, from.distance, scenario);
  return limits.flatMap((limit): Remark[] => {
    const stage = ride.stages.find((one) => one.limit === limit.limit);
    const part = partOfTheWay(scenario, limited, limit);
    const costs = limit.lost >= 1 ? ` That costs ${lasting(limit.lost)}.` : '';
    switch (limit.limit) {
      case 'heat': {
        const when = limit.from.time > 0 ? `after ${lasting(limit.from.time)}, ${where(limit)}` : 'from the start';
        const held = part
          ? ` limits the motor${part}`
          : ` limits the motor ${when}. From there it holds ${rounded(stage?.motorPower ?? 0, 'power')} of its ${text(climb.motorPower, 'power')}`;
        return [
          {
            tone: 'caution',
            text: `${who}: heat${held}.${costs} A real motor comes down more gradually, by rules of its own.`,
          },
        ];
      }
      case 'battery': {
        const when = limit.from.time > 0 ? `after ${lasting(limit.from.time)}, ${where(limit)}` : 'from the start';
        return [
          {
            tone: 'caution',
            text: `${who}: the battery is empty ${when}. The rest takes ${lasting(ride.time - limit.from.time)} without help.${costs}`,
          },
        ];
      }
      case 'torque':
        if (motorBound(climb).binds !== 'torque')
          return [
            {
              tone: 'caution',
              text: `${who}: in the lowest gear the cadence falls${part}, and with it what its ${text(climb.torque ?? 0, 'torque')} can give.${costs}`,
            },
          ];
        return [
          {
            tone: 'caution',
            text: `${who}: at ${text(climb.cadence ?? 0, 'cadence')} its ${text(climb.torque ?? 0, 'torque')} make ${rounded(motorBound(climb).power, 'power')}, less than the ${text(climb.motorPower, 'power')} of the motor.${costs}`,
          },
        ];
      case 'support':
        return [
          {
            tone: 'caution',
            text: `${who}: ${text(climb.riderPower, 'power')} of yours bring out ${rounded(motorBound(climb).power, 'power')} of the ${text(climb.motorPower, 'power')} at that support.${costs}`,
          },
        ];
      default:
        return [];
    }
  });
}

/** The brakes, where the road falls. `limits` are those of each bike. */
export function brakingRemark(scenario: Scenario, limits: readonly (readonly Limit[])[]): Remark[] {
  if (!limits.flat().some(({ limit }) => limit === 'brakes')) return [];
  const speed = formatQuantity(optionalOf(scenario, 'top-speed') ?? TOP_SPEED, 'speed', scenario.system, {
    trim: true,
  });
  const whose = isGiven(scenario, 'top-speed') ? '' : ', our assumption';
  return [
    {
      tone: 'caution',
      text: `Where the road falls the rider brakes rather than go faster than ${speed}${whose}. On an open trail ride only as fast as you can see and stop.`,
    },
  ];
}

/** A rider who tires before the top. `time` in s is that of the climb, `who` begins a sentence. */
export function enduranceRemarks(
  scenario: Scenario,
  power: number,
  endures: number | undefined,
  time: number,
  who: string,
): Remark[] {
  if (endures === undefined || !(endures < time)) return [];
  return [
    {
      tone: 'caution',
      text: `${who} takes ${lasting(time)}, and you hold ${formatQuantity(power, 'power', scenario.system, { trim: true })} for about ${lasting(endures)}. Hold less, or count on a slower last part. Such an effort is hard: if you are not used to it, ask a doctor first.`,
    },
  ];
}
