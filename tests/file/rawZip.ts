import { deflateSync, strToU8 } from "fflate";
import { crc32 } from "../../src/file/zip/crc32";

/** A file in a zip; what is left out is as it should be. */
export interface RawEntry {
  readonly path: string;
  readonly content: Uint8Array | string;
  readonly method?: number;
  readonly flags?: number;
  /** What the directory says, true or not. */
  readonly size?: number;
  readonly crc?: number;
}

const bytesOf = (numbers: readonly (readonly [value: number, bytes: 2 | 4])[]): Uint8Array =>
  Uint8Array.from(
    numbers.flatMap(([value, bytes]) => [0, 8, 16, 24].slice(0, bytes).map((by) => (value >>> by) & 255)),
  );

const joined = (pieces: readonly Uint8Array[]): Uint8Array => {
  const all = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
};

/** A zip that may say what no zip program would. */
export function rawZip(entries: readonly RawEntry[]): Uint8Array {
  const files: Uint8Array[] = [];
  const directory: Uint8Array[] = [];
  let offset = 0;
  for (const { path, content, method = 8, flags = 0x800, ...says } of entries) {
    const plain = typeof content === "string" ? strToU8(content) : content;
    const packed = method === 8 ? deflateSync(plain, { level: 9 }) : plain;
    const name = strToU8(path);
    const size = says.size ?? plain.length;
    const facts = [
      [20, 2],
      [flags, 2],
      [method, 2],
      [0, 4],
      [says.crc ?? crc32(plain), 4],
      [packed.length, 4],
      [size, 4],
      [name.length, 2],
      [0, 2],
    ] as const;
    const file = joined([bytesOf([[0x04034b50, 4], ...facts]), name, packed]);
    directory.push(bytesOf([[0x02014b50, 4], [20, 2], ...facts, [0, 2], [0, 2], [0, 2], [0, 4], [offset, 4]]), name);
    files.push(file);
    offset += file.length;
  }
  const list = joined(directory);
  const count = entries.length;
  const end = bytesOf([
    [0x06054b50, 4],
    [0, 4],
    [count, 2],
    [count, 2],
    [list.length, 4],
    [offset, 4],
    [0, 2],
  ]);
  return joined([...files, list, end]);
}
