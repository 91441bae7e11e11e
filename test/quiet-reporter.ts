import {
  DefaultReporter,
  type SerializedError,
  type TestCase,
  type TestModule,
  type TestRunEndReason,
  type TestSuite,
} from "vitest/node";

const SLOWEST = 10;

/** Totals and the slowest files; of a test that fails its title, the difference, and the command that runs it alone. */
export default class QuietReporter extends DefaultReporter {
  constructor() {
    super({ summary: false });
  }

  /** A file that is done is told of by the totals. */
  override printTestModule(): void {}

  override onTestRunEnd(modules: readonly TestModule[], errors: readonly SerializedError[], reason: TestRunEndReason): void {
    super.onTestRunEnd(modules, errors, reason);
    const failed = modules.filter((module) => module.state() === "failed").flatMap(commandsFor);
    if (failed.length > 0) this.log(`To run what failed alone:\n${failed.map((command) => `  ${command}\n`).join("")}`);
    const slowest = modules.map((module) => ({ file: module.relativeModuleId, seconds: secondsOf(module) }));
    slowest.sort((a, b) => b.seconds - a.seconds).splice(SLOWEST);
    this.log(
      `Slowest files:\n${slowest.map(({ file, seconds }) => `  ${seconds.toFixed(1).padStart(6)} s  ${file}\n`).join("")}`,
    );
  }
}

function secondsOf(module: TestModule): number {
  const { collectDuration, duration } = module.diagnostic();
  return (collectDuration + duration) / 1000;
}

/** One for each test that failed; one for the file where it failed outside of them. */
function commandsFor(module: TestModule): readonly string[] {
  const command = `npx vitest run --config test/vitest.config.ts ${module.relativeModuleId}`;
  const failed = [...module.children.allTests("failed")];
  return failed.length === 0 ? [command] : failed.map((test) => `${command} -t ${patternOf(test)}`);
}

/** What names it alone, as a shell takes it. */
function patternOf(test: TestCase): string {
  const title = `${namesOf(test)
    .join(" ")
    .replace(/[.*+?^$()[\]{}|\\]/g, "\\$&")}$`;
  return `'${title.replaceAll("'", "'\\''")}'`;
}

/** Its own name after those of the suites that it stands in. */
function namesOf(one: TestCase | TestSuite): readonly string[] {
  return one.parent.type === "suite" ? [...namesOf(one.parent), one.name] : [one.name];
}
