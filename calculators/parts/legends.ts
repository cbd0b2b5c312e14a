import type { Group, Remark, Section } from '../scenario/index.ts';

const LEGENDS: Partial<Record<Group, string>> = {
  hill: 'Hill',
  rider: 'Rider',
  bike: 'Bike',
  conditions: 'Surface',
  control: 'Control runs',
  target: 'The other hill',
  companion: 'Companion',
  gears: 'Gears',
  heat: 'Motor heat',
  battery: 'Battery',
  change: 'Changes',
  test: 'The test',
  schedule: 'The day',
};

/** What stands over a section of the form. */
export function legendOf({ group, legend }: Section, several: boolean): string {
  return legend ?? (group === 'bike' && several ? 'Bikes' : (LEGENDS[group] ?? ''));
}

/** A sentence of the answer that belongs beside a field. */
export const remarkBeside = (remarks: readonly Remark[], name: string): Remark | undefined =>
  remarks.find(({ field }) => field === name);
