/** Under which a workbook keeps the settings among what it keeps for others. */
export const SETTINGS = "pourwright";

/** Under which settings that cannot be understood are set aside. */
export const DAMAGED = "pourwright damaged";
