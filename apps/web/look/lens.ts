/**
 * The outline of a band as a lens: nothing at its ends, full where it is likely. An SVG path.
 * @param low place along the picture
 * @param likely at or after `low`
 * @param high at or after `likely`
 * @param middle across the picture
 * @param half the greatest half of its thickness
 */
export function lensPath(low: number, likely: number, high: number, middle: number, half: number): string {
  const [left, right] = [(low + likely) / 2, (likely + high) / 2];
  const [top, bottom] = [middle - half, middle + half];
  return [
    `M${xy(low, middle)}`,
    `C${xy(left, middle)} ${xy(left, top)} ${xy(likely, top)}`,
    `C${xy(right, top)} ${xy(right, middle)} ${xy(high, middle)}`,
    `C${xy(right, middle)} ${xy(right, bottom)} ${xy(likely, bottom)}`,
    `C${xy(left, bottom)} ${xy(left, middle)} ${xy(low, middle)}Z`,
  ].join('');
}

function xy(x: number, y: number): string {
  return `${String(Number(x.toFixed(2)))},${String(Number(y.toFixed(2)))}`;
}
