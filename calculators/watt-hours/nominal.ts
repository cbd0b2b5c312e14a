import { batteryOf, inputOf, isGiven, type Remark, type Scenario } from '../scenario/index.ts';

/** Nominal energy of the battery without its add-on, J: volts × amp-hours where both are given. */
export function nominalOf(scenario: Scenario): { nominal: number; notes: Remark[] } {
  const nominal = batteryOf(scenario, 0) ?? Number.NaN;
  const volts = inputOf(scenario, 'volts');
  const charge = inputOf(scenario, 'amp-hours');
  const caution = (text: string, field?: string): Remark[] => [{ tone: 'caution', text, ...(field ? { field } : {}) }];
  if (typeof volts === 'number' && typeof charge === 'number') {
    const beaten = isGiven(scenario, 'battery');
    return {
      nominal: volts * charge,
      notes: beaten
        ? caution('Watt-hours and volts with amp-hours are both given: volts with amp-hours count.', 'battery')
        : [],
    };
  }
  if (typeof volts !== 'number' && typeof charge !== 'number') return { nominal, notes: [] };
  const [given, missing] = typeof volts === 'number' ? ['volts', 'amp-hours'] : ['amp-hours', 'volts'];
  return {
    nominal,
    notes: caution(`Only ${given} are given. Without ${missing} they say nothing, so the battery’s watt-hours count.`),
  };
}
