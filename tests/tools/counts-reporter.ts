import type { Reporter, TestModule } from 'vitest/node';

/** Names every skipped test and closes the run with one plain line of counts. */
export default class CountsReporter implements Reporter {
  onTestRunEnd(modules: ReadonlyArray<TestModule>): void {
    let passed = 0;
    let failed = 0;
    const skipped: string[] = [];
    for (const module of modules) {
      for (const test of module.children.allTests()) {
        const state = test.result().state;
        if (state === 'passed') passed += 1;
        else if (state === 'failed') failed += 1;
        else skipped.push(`${module.relativeModuleId} > ${test.fullName}`);
      }
    }
    for (const name of skipped) console.log(`skipped: ${name}`);
    console.log(`${passed} passed, ${failed} failed, ${skipped.length} skipped`);
  }
}
