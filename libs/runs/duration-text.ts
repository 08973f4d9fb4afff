/** A length of time as people say it: `35 min`, `9 h 30`, `41 h`, `5 days`, `5 weeks`. @param length minutes, 0 or more */
export function durationText(length: number): string {
  const whole = Math.round(length);
  if (whole < 90) return `${String(whole)} min`;
  if (whole < 20 * 60) {
    const rounded = Math.round(whole / 5) * 5;
    const rest = rounded % 60;
    return rest === 0
      ? `${String(rounded / 60)} h`
      : `${String(Math.floor(rounded / 60))} h ${String(rest).padStart(2, '0')}`;
  }
  if (whole < 100 * 60) return `${String(Math.round(whole / 60))} h`;
  if (whole < 21 * 1440) return `${String(Math.round(whole / 1440))} days`;
  return `${(whole / 10_080).toFixed(1).replace(/\.0$/, '')} weeks`;
}
