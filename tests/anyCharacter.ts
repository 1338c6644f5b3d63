import fc from "fast-check";

/** Any character there is. The library's own unit for it takes seconds to begin with. */
export const anyCharacter = fc.integer({ min: 0, max: 0x10ffff }).map((code) => String.fromCodePoint(code));
