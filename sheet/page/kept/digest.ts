const known = new WeakMap<Uint8Array, Promise<string>>();

async function digested(bytes: Uint8Array): Promise<string> {
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes as BufferSource));
  return Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** The SHA-256 digest of a file, computed once for the same bytes. */
export function digestOf(bytes: Uint8Array): Promise<string> {
  const found = known.get(bytes) ?? digested(bytes);
  known.set(bytes, found);
  return found;
}
