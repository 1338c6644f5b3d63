/** A file that is not opened. The message is for the maker: why, and what to do. */
export class FileRefused extends Error {
  override readonly name = "FileRefused";
}

const AGAIN =
  "Open it in the program that made it, save it there as an .xlsx file under a new name, and open that here.";

/** A file that breaks off or contradicts itself; `how` is a whole sentence about it. */
export const damaged = (how: string, cause?: unknown): FileRefused =>
  new FileRefused(`This file is damaged. ${how} ${AGAIN}`, { cause });

/** A file that holds more than the page can carry. */
export const tooLarge = (how: string): FileRefused =>
  new FileRefused(
    `This file is too large. ${how} Move what you do not need here into another workbook, and open it again.`,
  );
