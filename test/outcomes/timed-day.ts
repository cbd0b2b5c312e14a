import type { DayBike, DayDocument, DayRun, Texts } from '../../calculators/day/document.ts';

/*
 * The hill of 1 mile and 550 ft as a test day: common practice, no source. Times, powers and masses as in test/reference/timed-hill.ts, in the
 * words in which a tester would type them.
 */

const bike = (id: string, texts: Texts): DayBike => ({
  id,
  texts: { tyres: 'one pair for all', limit: 'none', ...texts },
});

const run = (id: string, owner: string, time: string, power: string, assisted = true): DayRun => ({
  id,
  bike: owner,
  assisted,
  counted: true,
  texts: { time, power },
});

export const timedDay: DayDocument = {
  version: 1,
  system: 'us',
  comparing: 'bikes',
  setup: { distance: '1 mi', gain: '550 ft', rider: '80 kg', power: '200' },
  bikes: [
    bike('control', { name: 'Control', bike: '23', motor: 'none' }),
    bike('light', { name: 'Light', bike: '37' }),
    bike('mid', { name: 'Mid', bike: '45' }),
    bike('full', { name: 'Full', bike: '52' }),
  ],
  runs: [
    run('c1', 'control', '16:43', '200', false),
    run('l1', 'light', '7:22', '200'),
    run('m1', 'mid', '5:57', '200'),
    run('f1', 'full', '4:56', '200'),
    run('c2', 'control', '11:18', '300', false),
  ],
};

/** The same day with other texts in the set-up. */
export const withSetup = (texts: Texts, day = timedDay): DayDocument => ({ ...day, setup: { ...day.setup, ...texts } });

/** The same day with other texts of one bike or one run. */
export function withTexts(of: string, texts: Texts, day = timedDay): DayDocument {
  const change = <T extends { id: string; texts: Texts }>(one: T): T =>
    one.id === of ? { ...one, texts: { ...one.texts, ...texts } } : one;
  return { ...day, bikes: day.bikes.map(change), runs: day.runs.map(change) };
}

/** The same day with another bike and its runs, before the last control run. */
export function withBike(
  id: string,
  texts: Texts,
  rows: readonly (readonly [string, string])[],
  day = timedDay,
): DayDocument {
  const added = rows.map(([time, power], i) => run(`${id}${i + 1}`, id, time, power));
  return {
    ...day,
    bikes: [...day.bikes, bike(id, texts)],
    runs: [...day.runs.slice(0, -1), ...added, ...day.runs.slice(-1)],
  };
}

/** The same day without some runs. */
export const withoutRuns = (ids: readonly string[], day = timedDay): DayDocument => ({
  ...day,
  runs: day.runs.filter(({ id }) => !ids.includes(id)),
});

/** The same day ridden several times over, forward and back, each time multiplied by its factor; control runs stay first and last. */
export function withRepeats(day: DayDocument, factors: readonly number[]): DayDocument {
  const assisted = day.runs.filter((run) => run.assisted);
  const rounds = factors.flatMap((factor, round) => {
    const order = round % 2 === 0 ? assisted : [...assisted].reverse();
    return order.map((one) => ({
      ...one,
      id: `${one.id}${round + 1}`,
      texts: { ...one.texts, time: `${(secondsOf(one.texts.time ?? '') * factor).toFixed(1)} s` },
    }));
  });
  const controls = day.runs.filter((run) => !run.assisted);
  return { ...day, runs: [...controls.slice(0, 1), ...rounds, ...controls.slice(1)] };
}

const secondsOf = (clock: string): number => clock.split(':').reduce((sum, part) => 60 * sum + Number(part), 0);
