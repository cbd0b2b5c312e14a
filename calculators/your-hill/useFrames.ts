import { useEffect, useRef } from 'preact/hooks';

/** Does some work before each frame that is drawn, while it runs. */
export function useFrames(runs: boolean, work: () => void): void {
  const latest = useRef(work);
  latest.current = work;
  useEffect(() => {
    if (!runs) return;
    let request = requestAnimationFrame(function next() {
      latest.current();
      request = requestAnimationFrame(next);
    });
    return () => cancelAnimationFrame(request);
  }, [runs]);
}
