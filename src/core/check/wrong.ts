import { Fault } from "../fault";

/** A fault of the input: which argument, what is wrong with it, what to do. */
export function wrong(argument: string, sentence: string): Fault {
  return new Fault("value", argument, sentence);
}
