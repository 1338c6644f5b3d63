/** What findings begin with, those of a reading behind its place in the burn. Formulas know the findings by it. */

/** Beyond the limits. */
export const BEYOND = { flame: "flame ", soot: "soot", glass: "glass temperature " } as const;
/** To look at; none may begin as one beyond. */
export const TO_LOOK_AT = { pool: "pool ", long: "burnt ", fall: "wax left " } as const;
/** What is asked of a reading that none can show, among what is still to be done; none may begin as those above. */
export const DOUBT = { out: "no flame", low: "low flame", narrow: "narrow pool", cold: "cold glass" } as const;
/** What is still to be done, where nothing was read and where a pool cannot be judged. */
export const NOTHING_READ = "nothing is read yet; burn a first cycle";
export const NO_WIDTH = "the inside width of its vessel is not known";
/** Before all that is still to be done. */
export const NOT_FINISHED = "not finished: ";
