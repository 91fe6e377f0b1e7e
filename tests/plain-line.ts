import type { Reporter } from 'vitest/node';

/** Ends a run with one line that any tool can read: "N passed, N failed, N skipped". */
export default class PlainLine implements Reporter {
  onTestRunEnd: NonNullable<Reporter['onTestRunEnd']> = (modules, errors) => {
    const count = { passed: 0, failed: 0, skipped: 0, pending: 0 };
    for (const module of modules) {
      if (module.state() === 'failed' && module.errors().length > 0) count.failed++;
      for (const test of module.children.allTests()) count[test.result().state]++;
    }
    console.log(
      `${count.passed} passed, ${count.failed + count.pending + errors.length} failed, ${count.skipped} skipped`,
    );
  };
}
