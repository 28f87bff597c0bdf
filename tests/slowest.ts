import type { Reporter, TestModule } from 'vitest/node';

/** Prints the ten files of tests that took longest, where so many ran, so that what slows every run is seen. */
export default class Slowest implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    if (modules.length <= 10) return;
    const seconds = (one: TestModule): number =>
      (one.diagnostic().duration + one.diagnostic().collectDuration) / 1000;
    const slowest = [...modules].sort((a, b) => seconds(b) - seconds(a)).slice(0, 10);
    const lines = slowest.map((one) => `${seconds(one).toFixed(1).padStart(7)} s  ${one.relativeModuleId}`);
    console.log(['', 'The ten slowest files:', ...lines, ''].join('\n'));
  }
}
