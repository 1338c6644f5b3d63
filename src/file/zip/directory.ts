import { damaged } from "../refused";

/** A file in a zip as the zip's directory tells of it. */
export interface Entry {
  readonly path: string;
  readonly encrypted: boolean;
  readonly method: number;
  readonly crc: number;
  readonly packedSize: number;
  readonly size: number;
  /** Where its own header stands. */
  readonly offset: number;
}

const END = 0x06054b50;
const END_64 = 0x06064b50;
const LOCATOR_64 = 0x07064b50;
const ENTRY = 0x02014b50;
const HEADER = 0x04034b50;
/** A zip may end with a comment of this length at most. */
const LONGEST_COMMENT = 0xffff;
const MOST_ENTRIES = 20_000;

const view = (bytes: Uint8Array): DataView => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

/** What the directory at the end of a zip lists, in the order of the files. */
export function readDirectory(bytes: Uint8Array): Entry[] {
  try {
    return entries(bytes);
  } catch (error) {
    // Reading past the end.
    if (error instanceof RangeError) throw damaged("Its list of contents points to a place outside of it.");
    throw error;
  }
}

/** The packed bytes of a file in a zip. */
export function packedBytes(bytes: Uint8Array, { path, offset, packedSize }: Entry): Uint8Array {
  const data = view(bytes);
  if (offset + 30 > bytes.length || data.getUint32(offset, true) !== HEADER) {
    throw damaged(`The part "${path}" is not where the file says.`);
  }
  const start = offset + 30 + data.getUint16(offset + 26, true) + data.getUint16(offset + 28, true);
  if (start + packedSize > bytes.length) throw damaged(`The part "${path}" breaks off.`);
  return bytes.subarray(start, start + packedSize);
}

function entries(bytes: Uint8Array): Entry[] {
  const data = view(bytes);
  const { count, start } = place(data);
  if (count > MOST_ENTRIES) throw damaged(`It says that it has ${count} parts, which no workbook has.`);
  const found: Entry[] = [];
  let at = start;
  for (let i = 0; i < count; i++) {
    if (data.getUint32(at, true) !== ENTRY) throw damaged("Its list of contents breaks off.");
    const nameLength = data.getUint16(at + 28, true);
    const extraLength = data.getUint16(at + 30, true);
    const nameEnd = at + 46 + nameLength;
    if (nameEnd + extraLength > bytes.length) throw damaged("Its list of contents breaks off.");
    found.push({
      path: new TextDecoder().decode(bytes.subarray(at + 46, nameEnd)),
      encrypted: (data.getUint16(at + 8, true) & 1) === 1,
      method: data.getUint16(at + 10, true),
      crc: data.getUint32(at + 16, true),
      ...sizes(data, at, nameEnd, extraLength),
    });
    at = nameEnd + extraLength + data.getUint16(at + 32, true);
  }
  return found;
}

/** Where the directory begins and how much it lists. */
function place(data: DataView): { count: number; start: number } {
  const last = data.byteLength - 22;
  for (let at = last; at >= 0 && at >= last - LONGEST_COMMENT; at--) {
    if (data.getUint32(at, true) !== END) continue;
    const count = data.getUint16(at + 10, true);
    const start = data.getUint32(at + 16, true);
    if (count < 0xffff && start < 0xffffffff) return { count, start };
    if (at < 20 || data.getUint32(at - 20, true) !== LOCATOR_64) return { count, start };
    const end64 = long(data, at - 12);
    if (data.getUint32(end64, true) !== END_64) throw damaged("Its list of contents is missing.");
    return { count: long(data, end64 + 32), start: long(data, end64 + 48) };
  }
  throw damaged("Its end is missing, as after a download or a copy that broke off.");
}

/** The sizes of an entry and where it stands; those that need more room stand in its extra field 1. */
function sizes(data: DataView, at: number, extra: number, extraLength: number) {
  let [size, packedSize, offset] = [24, 20, 42].map((place) => data.getUint32(at + place, true)) as [
    number,
    number,
    number,
  ];
  for (let field = extra; field + 4 <= extra + extraLength; field += 4 + data.getUint16(field + 2, true)) {
    if (data.getUint16(field, true) !== 1) continue;
    let next = field + 4;
    const longer = (value: number): number => {
      if (value !== 0xffffffff) return value;
      next += 8;
      return long(data, next - 8);
    };
    size = longer(size);
    packedSize = longer(packedSize);
    offset = longer(offset);
  }
  return { size, packedSize, offset };
}

const long = (data: DataView, at: number): number => Number(data.getBigUint64(at, true));
