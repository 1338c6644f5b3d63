const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
  return rest;
});

/** The check sum that a zip keeps of each of its files. */
export function crc32(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (let i = 0; i < bytes.length; i++) sum = (sum >>> 8) ^ (TABLE[(sum ^ (bytes[i] as number)) & 255] as number);
  return ~sum >>> 0;
}
