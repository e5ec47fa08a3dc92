import type { Reporter, TestModule } from 'vitest/node';

/** Ends the run with one plain line that any tool can read: `N passed, N failed`. */
export default class CountLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], errors: readonly unknown[]): void {
    const count = { passed: 0, failed: errors.length, skipped: 0, pending: 0 };
    for (const module of modules) {
      count.failed += module.errors().length;
      for (const test of module.children.allTests()) count[test.result().state] += 1;
    }
    const left = count.skipped + count.pending;
    const skipped = left > 0 ? `, ${left} skipped` : '';
    // The default reporter prints its summary in the same hook; the last line must be this one.
    process.once('exit', () =>
      process.stdout.write(`\n${count.passed} passed, ${count.failed} failed${skipped}\n`),
    );
  }
}
