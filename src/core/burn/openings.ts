/** What findings begin with, behind their place in the burn. Formulas on sheets know the findings by it. */

/** Beyond the limits. */
export const BEYOND = { flame: "flame ", soot: "soot", glass: "glass temperature " } as const;
/** To look at; none may begin as one beyond. */
export const TO_LOOK_AT = { pool: "pool ", long: "burnt ", out: "no flame", cold: "cold glass" } as const;
