import { Fault } from "../fault";

/** A fault of the input: `name: what is wrong; what to do`. */
export function wrong(name: string, sentence: string): Fault {
  return new Fault("value", `${name}: ${sentence}`);
}
