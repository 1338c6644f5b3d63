/** How the bytes of an XML document are to be read: by its mark, its first bytes or its declaration; null when unknown. */
export function decoderFor(bytes: Uint8Array): TextDecoder | null {
  const [a, b] = bytes;
  const name =
    (a === 0xff && b === 0xfe) || (a === 0x3c && b === 0)
      ? "utf-16le"
      : (a === 0xfe && b === 0xff) || (a === 0 && b === 0x3c)
        ? "utf-16be"
        : declared(bytes);
  try {
    return new TextDecoder(name, { fatal: true });
  } catch {
    return null;
  }
}

function declared(bytes: Uint8Array): string {
  const start = String.fromCharCode(...bytes.subarray(0, 200));
  return /^(?:\u00ef\u00bb\u00bf)?<\?xml[^>]*?encoding\s*=\s*["']([\w.-]+)["']/.exec(start)?.[1] ?? "utf-8";
}
