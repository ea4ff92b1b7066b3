import { CommandError, EXIT } from "./call.js";
import { COMMAND_HELP, type CommandName, MAIN_HELP } from "./help.js";

type Command = (words: readonly string[]) => Promise<number>;

/** Loaded only when called: `--help` must not wait for the analysis. */
const COMMANDS: Readonly<Record<CommandName, () => Promise<Command>>> = {
  new: async () => (await import("./newStudy.js")).newStudy,
  check: async () => (await import("./checkCommand.js")).checkStudy,
  compute: async () => (await import("./computeCommand.js")).computeCommand,
  compare: async () => (await import("./compareCommand.js")).compareCommand,
  looks: async () => (await import("./looksCommand.js")).looksCommand,
  appendix: async () => (await import("./appendixCommand.js")).makeAppendix,
  run: async () => (await import("./runCommand.js")).runCommand,
  report: async () => (await import("./reportCommand.js")).reportCommand,
  page: async () => (await import("./pageCommand.js")).pageCommand,
  site: async () => (await import("./siteCommand.js")).siteCommand,
  plan: async () => (await import("./planCommand.js")).planCommand,
  survey: async () => (await import("./surveyCommand.js")).surveyCommand,
  export: async () => (await import("./exportCommand.js")).exportCommand,
  schema: async () => (await import("./schemaCommand.js")).schemaCommand,
  notebooks: async () => (await import("./notebooksCommand.js")).notebooksCommand,
  kernel: async () => (await import("./kernelCommand.js")).writeKernel,
};

/** Runs a command line and returns its exit code. */
export async function main(words: readonly string[]): Promise<number> {
  // Whoever reads us may have seen enough and closed the pipe: that is no fault.
  process.stdout.on("error", (problem: NodeJS.ErrnoException) => {
    if (problem.code === "EPIPE") process.exit(EXIT.ok);
    throw problem;
  });
  const [name, ...rest] = words;
  if (name === undefined || name === "--help" || name === "-h" || name === "help") {
    process.stdout.write(MAIN_HELP);
    return name === undefined ? EXIT.usage : EXIT.ok;
  }
  if (!Object.hasOwn(COMMANDS, name)) {
    process.stderr.write(`There is no command “${name}”.\n\n${MAIN_HELP}`);
    return EXIT.usage;
  }
  const command = name as CommandName;
  if (rest.includes("--help") || rest.includes("-h")) {
    process.stdout.write(COMMAND_HELP[command]);
    return EXIT.ok;
  }
  try {
    const run = await COMMANDS[command]();
    return await run(rest);
  } catch (problem) {
    if (isStudyError(problem)) {
      process.stderr.write(`${problem.message}\n\nNothing was written.\n`);
      return EXIT.badInput;
    }
    if (problem instanceof CommandError) {
      process.stderr.write(`${problem.message}\n`);
      return problem.exitCode;
    }
    process.stderr.write(
      `Internal error, not in your study:\n${(problem as Error).stack ?? problem}\n`,
    );
    return EXIT.fault;
  }
}

/** By its name: loading its class here would load the study's code before it is needed. */
function isStudyError(problem: unknown): problem is Error {
  return problem instanceof Error && problem.name === "StudyError";
}
