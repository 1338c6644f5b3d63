import { isCalled, tokens } from "./tokens";

/** Whether a formula as it is typed calls one of our functions, and so may spill. */
export const callsOurs = (formula: string): boolean =>
  /POUR\./i.test(formula) &&
  tokens(formula).some(
    ({ kind, text }, at, pieces) => kind === "word" && /^POUR\./i.test(text) && isCalled(pieces, at),
  );
