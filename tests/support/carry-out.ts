import { controllability, type Stnu } from '#planner';

/**
 * Starts stages minute by minute, each as early as what is left then stays controllable, never knowing what has not
 * come about.
 * @param net stage k of the problem is point k + 1; point 0 is the origin; then the ends of contingent links
 * @param comes the minute at which a contingent link that was set off ends, given the starts of the stages
 * @returns starts by stage; null for those for which there was no moment left
 */
export function carryOut(
  net: Stnu,
  stages: number,
  until: number,
  comes: (contingent: number, starts: readonly (number | null)[]) => number,
): (number | null)[] {
  const times: (number | null)[] = Array.from({ length: net.points }, (_, i) => (i === 0 ? 0 : null));
  const starts = (): (number | null)[] => times.slice(1, stages + 1);
  for (let now = 0; now <= until && starts().includes(null); now++) {
    let moved = true;
    while (moved) {
      net.contingents.forEach(({ from, to }, c) => {
        if (times[from] !== null && times[to] === null && comes(c, starts()) <= now) times[to] = now;
      });
      const next = starts().findIndex(
        (start, i) => start === null && controllability(known(net, times.with(i + 1, now), now)).controllable,
      );
      moved = next >= 0;
      if (moved) times[next + 1] = now;
    }
  }
  return starts();
}

/** The network with what has happened fixed, and the rest not before now. */
function known(
  { points, requirements, contingents }: Stnu,
  times: readonly (number | null)[],
  now: number,
): Stnu {
  const happened = times.flatMap((at, point) =>
    point === 0 || contingents.some(({ to }) => to === point)
      ? []
      : [at === null ? { from: 0, to: point, min: now } : { from: 0, to: point, min: at, max: at }],
  );
  return {
    points,
    requirements: [...requirements, ...happened],
    contingents: contingents.map((link) => {
      const [begun, ended] = [times[link.from]!, times[link.to]!] as [number | null, number | null];
      if (begun === null) return link;
      if (ended !== null) return { ...link, min: ended - begun, max: ended - begun };
      return { ...link, min: Math.max(link.min, now + 1 - begun) };
    }),
  };
}
