/** @typedef {{ passed: number, failed: number, skipped: number }} Counts */

/**
 * Counts what vitest reports, and never less than one failure when something went wrong.
 * @param {{ testResults: { status: string, assertionResults: { status: string }[] }[] }} report
 * @param {boolean} endedWell whether vitest itself called the run good
 * @returns {Counts}
 */
export function countTests({ testResults }, endedWell) {
  const statuses = testResults.flatMap(({ status, assertionResults }) => [
    ...assertionResults.map((test) => test.status),
    // A file that fails before or after its tests is a failure that belongs to none of them.
    ...(status === 'failed' && !assertionResults.some(isFailed) ? ['failed'] : []),
  ]);
  const passed = statuses.filter((status) => status === 'passed').length;
  const failed = statuses.filter((status) => status === 'failed').length;
  const skipped = statuses.length - passed - failed;
  // An error outside any file ends vitest with a failure that its report does not hold.
  return { passed, failed: endedWell ? failed : Math.max(failed, 1), skipped };
}

/** @param {{ status: string }} test */
function isFailed({ status }) {
  return status === 'failed';
}
