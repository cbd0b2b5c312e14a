const DAY = 24 * 60;

/** A time of the day, s after midnight, as h:mm; later days are named. */
export function clockText(seconds: number): string {
  const minutes = Math.round(seconds / 60);
  const days = Math.floor(minutes / DAY);
  const clock = `${Math.floor((minutes % DAY) / 60)}:${String(minutes % 60).padStart(2, '0')}`;
  if (days === 0) return clock;
  return days === 1 ? `${clock} the next day` : `${clock}, ${days} days later`;
}
