/** What a command says to the shell. `fault` is a fault of the program, by the number that system programs use for it. */
export const exitCodes = { passes: 0, fails: 1, badInput: 2, fault: 70 } as const;

export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];

/** Input that a person has to mend; its message is all they need to see. */
export class BadInput extends Error {
  override readonly name = 'BadInput';
}
