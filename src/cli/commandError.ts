/** A command cannot go on, for a reason that the user can mend. The message is all they need. */
export class CommandError extends Error {
  readonly exitCode: number;

  constructor(exitCode: number, message: string) {
    super(message);
    this.name = "CommandError";
    this.exitCode = exitCode;
  }
}
