import { afterEach, expect, test } from 'vitest';
import { joinTabs, type OtherTabs } from '../../calculators/your-hill/otherTabs.ts';
import type { Recording } from '../../calculators/your-hill/reading/recording.ts';

const recording = (file: string, points: number): Recording =>
  ({ file, parts: [{ track: { distance: new Float64Array(points) } }] }) as unknown as Recording;

const tabs: OtherTabs[] = [];
afterEach(() => {
  for (const tab of tabs.splice(0)) tab.close();
});

test('a tab hears what another one keeps or forgets, and tells its own recording from another', async () => {
  const mine = recording('tour.gpx', 100);
  const heard: (boolean | 'forgotten')[] = [];
  let hear = (): void => {};
  tabs.push(
    joinTabs((what) => {
      heard.push(what === 'forgotten' ? what : what(mine));
      hear();
    }),
  );
  const other = joinTabs(() => heard.push('forgotten'));
  tabs.push(other);
  const next = (): Promise<void> => new Promise((done) => (hear = done));
  for (const told of [recording('other.gpx', 100), recording('tour.gpx', 101), recording('tour.gpx', 100), null]) {
    const told_ = next();
    other.tell(told);
    await told_;
  }
  // a tab does not hear itself
  expect(heard).toEqual([false, false, true, 'forgotten']);
});
