/** Wrong words on the command line: said in a sentence, answered with exit code 2. */
export class UsageError extends Error {}

export const usage = `Loomwright checks low-voltage electrical plans written in TypeScript.

Usage
  loomwright check [files or folders]    check plans; without names, those below this folder
  loomwright fix [files or folders]      apply every proven repair, then check again
  loomwright explain <rule>              what a rule checks, why, and where its numbers come from
  loomwright explain                     all rules, a line each

Options
  --format text|json    how results are written (check); text unless you say otherwise
  --max-warnings N      how many warnings are tolerated (check, fix); none unless you say otherwise
  --dry-run             show what fix would change and write nothing
  --version             the version
  --help                this text

Exit codes
  0  nothing found (hints, information and accepted findings do not count)
  1  errors found, or more warnings than tolerated
  2  a plan could not be evaluated, or the command was not understood

Loomwright is a planning aid. Batteries can deliver thousands of amperes. Local codes rule.
`;
