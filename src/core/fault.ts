/**
 * A result that cannot be given. `argument` names what is at fault, empty where no single one is;
 * `sentence` says what to fix and how. The message is both: `load: 6 means 600 %; write 6% or 0.06`.
 * `value`: the input is wrong. `none`: the input is right and no answer exists.
 */
export class Fault extends Error {
  constructor(
    readonly kind: "value" | "none",
    readonly argument: string,
    readonly sentence: string,
  ) {
    super(argument === "" ? sentence : `${argument}: ${sentence}`);
    this.name = "Fault";
  }
}
