/**
 * A length of time as people say it: `35 min`, `9 h 30`, `41 h`, `5 days`, `5 weeks`.
 * @param length minutes, 0 or more
 * @param scale the length whose unit to use, so that a band reads in one unit
 */
export function durationText(length: number, scale: number = length): string {
  if (scale < 90) return `${String(Math.round(length))} min`;
  if (scale < 20 * 60) {
    const rounded = Math.round(length / 5) * 5;
    const rest = rounded % 60;
    const whole = String(Math.floor(rounded / 60));
    return rest === 0 ? `${whole} h` : `${whole} h ${String(rest).padStart(2, '0')}`;
  }
  if (scale < 100 * 60) return `${String(Math.round(length / 60))} h`;
  if (scale < 21 * 1440) return `${String(Math.round(length / 1440))} days`;
  return `${(length / 10_080).toFixed(1).replace(/\.0$/, '')} weeks`;
}
