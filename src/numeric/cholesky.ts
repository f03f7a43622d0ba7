/**
 * Factors a symmetric positive definite matrix A = L Lᵀ in place and returns log det A, or NaN where A is not
 * positive definite. Row-major n × n; only the lower half is read and written; the stride of a row is n.
 */
export function factorCholesky(matrix: Float64Array, n: number): number {
  let logDeterminant = 0;
  for (let j = 0; j < n; j++) {
    const row = j * n;
    let pivot = matrix[row + j];
    for (let k = 0; k < j; k++) pivot -= matrix[row + k] * matrix[row + k];
    if (!(pivot > 0)) return Number.NaN;
    logDeterminant += Math.log(pivot);
    const root = Math.sqrt(pivot);
    matrix[row + j] = root;
    for (let i = j + 1; i < n; i++) {
      const below = i * n;
      let sum = matrix[below + j];
      for (let k = 0; k < j; k++) sum -= matrix[below + k] * matrix[row + k];
      matrix[below + j] = sum / root;
    }
  }
  return logDeterminant;
}

/** Turns a lower triangle L into its inverse, in place. Row-major n × n, stride n. */
export function invertLower(lower: Float64Array, n: number): void {
  for (let j = 0; j < n; j++) {
    lower[j * n + j] = 1 / lower[j * n + j];
    for (let i = j + 1; i < n; i++) {
      let sum = 0;
      for (let k = j; k < i; k++) sum -= lower[i * n + k] * lower[k * n + j];
      lower[i * n + j] = sum / lower[i * n + i];
    }
  }
}
