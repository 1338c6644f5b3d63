/** Under which a workbook keeps the settings among what it keeps for others. */
export const SETTINGS = "pourwright";

/** Under which settings that cannot be understood are set aside. */
export const DAMAGED = "pourwright damaged";

/** Under which it keeps that it is to open without the add-in. */
export const STARTUP = "pourwright start-up";
