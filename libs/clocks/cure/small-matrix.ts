/** Symmetric positive definite matrices of a few rows, as arrays of rows. */
export type Rows = readonly (readonly number[])[];

/**
 * The lower triangle L with A = L Lᵀ (Cholesky).
 * @throws RangeError when A is not positive definite to rounding
 * @see G. H. Golub, C. F. Van Loan, Matrix Computations, section 4.2 (from memory)
 */
export function cholesky(a: Rows): number[][] {
  const lower: number[][] = [];
  for (const [i, row] of a.entries()) {
    const made: number[] = [];
    lower.push(made);
    for (let j = 0; j <= i; j += 1) {
      const other = lower[j] ?? [];
      let sum = row[j] ?? NaN;
      for (let k = 0; k < j; k += 1) sum -= (made[k] ?? NaN) * (other[k] ?? NaN);
      if (j === i && !(sum > 0)) throw new RangeError('the matrix is not positive definite');
      made.push(j === i ? Math.sqrt(sum) : sum / (other[j] ?? NaN));
    }
  }
  return lower;
}

/** x with L x = b. */
export function solveLower(lower: Rows, b: readonly number[]): number[] {
  const x: number[] = [];
  for (const [i, row] of lower.entries()) {
    let sum = b[i] ?? NaN;
    for (let k = 0; k < i; k += 1) sum -= (row[k] ?? NaN) * (x[k] ?? NaN);
    x.push(sum / (row[i] ?? NaN));
  }
  return x;
}

/** x with Lᵀ x = b. Of b standard normal, x has the covariance A⁻¹. */
export function solveUpper(lower: Rows, b: readonly number[]): number[] {
  const x = new Array<number>(lower.length).fill(0);
  for (let i = lower.length - 1; i >= 0; i -= 1) {
    let sum = b[i] ?? NaN;
    for (let k = i + 1; k < lower.length; k += 1) sum -= (lower[k]?.[i] ?? NaN) * (x[k] ?? NaN);
    x[i] = sum / (lower[i]?.[i] ?? NaN);
  }
  return x;
}

/** √(A⁻¹)ᵢᵢ for the last i: the standard deviation of the last of the unknowns, whose precision is A. */
export function lastDeviation(lower: Rows): number {
  return 1 / (lower.at(-1)?.at(-1) ?? NaN);
}
