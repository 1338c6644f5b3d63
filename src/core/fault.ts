/**
 * A result that cannot be given, with a sentence that says what to fix and how.
 * `value`: the input is wrong. `none`: the input is right and no answer exists.
 */
export class Fault extends Error {
  constructor(
    readonly kind: "value" | "none",
    message: string,
  ) {
    super(message);
    this.name = "Fault";
  }
}
