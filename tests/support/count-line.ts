import type { Reporter, TestCase, TestModule } from 'vitest/node';

/** What did not run and why, as far as it said so. */
const notRun = (test: TestCase): string => {
  const result = test.result();
  const reason = result.state === 'skipped' && result.note ? `: ${result.note}` : '';
  return `not run: ${test.fullName}${reason}\n`;
};

/** Names the tests that were not run, and ends the run with one plain line that any tool can read: `N passed, N failed`. */
export default class CountLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], errors: readonly unknown[]): void {
    const count = { passed: 0, failed: errors.length, skipped: 0, pending: 0 };
    let named = '';
    for (const module of modules) {
      count.failed += module.errors().length;
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        count[state] += 1;
        if (state === 'skipped') named += notRun(test);
      }
    }
    const left = count.skipped + count.pending;
    const skipped = left > 0 ? `, ${left} skipped` : '';
    // The default reporter prints its summary in the same hook; the last line must be this one.
    process.once('exit', () =>
      process.stdout.write(`\n${named}${count.passed} passed, ${count.failed} failed${skipped}\n`),
    );
  }
}
