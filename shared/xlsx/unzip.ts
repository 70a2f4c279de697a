import { Inflate } from "fflate";

/** A file that is refused; its message is for the person who chose it. */
export class Unreadable extends Error {}

/** The parts of a package by their names, in the order in which the file holds them. */
export type Parts = Map<string, Uint8Array>;

/** Limits far above any shop's workbook: a file beyond them is a zip bomb. */
export const limits = { unpacked: 100_000_000, ratio: 200, ratioFrom: 1_000_000 };

const tooLarge = () => new Unreadable("it unpacks to more than 100 MB, or more than 200 times its size, as no real workbook does");
const damaged = () => new Unreadable("it is damaged: save it again in your spreadsheet program");

const signature = { local: 0x04034b50, entry: 0x02014b50, end: 0x06054b50, compound: 0xe011cfd0 };
const sizes = { local: 30, entry: 46, end: 22, comment: 0xffff };
const methods = { stored: 0, deflated: 8 };

interface Entry {
  readonly name: string;
  readonly method: number;
  readonly packed: Uint8Array;
  readonly size: number;
}

/** Whether the bytes contain a word in UTF-16LE. */
function holds(bytes: Uint8Array, word: string): boolean {
  const wanted = [...word].flatMap((letter) => [letter.charCodeAt(0), 0]);
  return bytes.some((_, at) => wanted.every((byte, i) => bytes[at + i] === byte));
}

/** The kind of a file that is no package, by its first bytes. */
function refuseOthers(bytes: Uint8Array, view: DataView): void {
  if (bytes.length < 4) throw new Unreadable("it is not a workbook");
  if (view.getUint32(0, true) === signature.compound)
    throw new Unreadable(
      holds(bytes, "EncryptedPackage")
        ? "it has a password: save it without one first"
        : "it is an old-style workbook (.xls): save it as .xlsx first",
    );
  if (view.getUint32(0, true) !== signature.local) throw new Unreadable("it is not a workbook");
}

/** The offset of the end of central directory record, which a comment of any length may follow. */
function endOf(view: DataView): number {
  const first = Math.max(0, view.byteLength - sizes.end - sizes.comment);
  for (let at = view.byteLength - sizes.end; at >= first; at--) if (view.getUint32(at, true) === signature.end) return at;
  throw damaged();
}

function* entriesOf(bytes: Uint8Array, view: DataView): Generator<Entry> {
  const end = endOf(view);
  const count = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  for (let i = 0; i < count; i++) {
    if (view.getUint32(at, true) !== signature.entry) throw damaged();
    const [nameLength, extraLength, commentLength] = [28, 30, 32].map((offset) => view.getUint16(at + offset, true));
    if (view.getUint16(at + 8, true) & 1) throw new Unreadable("it has a password: save it without one first");
    const local = view.getUint32(at + 42, true);
    if (view.getUint32(local, true) !== signature.local) throw damaged();
    const start = local + sizes.local + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
    const packedSize = view.getUint32(at + 20, true);
    if (start + packedSize > bytes.length) throw damaged();
    yield {
      name: new TextDecoder().decode(bytes.subarray(at + sizes.entry, at + sizes.entry + nameLength)),
      method: view.getUint16(at + 10, true),
      packed: bytes.subarray(start, start + packedSize),
      size: view.getUint32(at + 24, true),
    };
    at += sizes.entry + nameLength + extraLength + commentLength;
  }
}

const step = 16_384;

/** Inflates in chunks and checks the limit after each: the sizes stated in a file are not trusted. */
function inflated({ packed, size }: Entry, allowed: (soFar: number) => void): Uint8Array {
  const chunks: Uint8Array[] = [];
  let soFar = 0;
  const inflate = new Inflate((chunk) => {
    soFar += chunk.length;
    allowed(soFar);
    chunks.push(chunk);
  });
  for (let at = 0; at < packed.length; at += step) inflate.push(packed.subarray(at, at + step), at + step >= packed.length);
  if (soFar !== size) throw damaged();
  const whole = new Uint8Array(soFar);
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

function unpacked(bytes: Uint8Array, view: DataView): Parts {
  const parts: Parts = new Map();
  let total = 0;
  for (const entry of entriesOf(bytes, view)) {
    const { name, method, packed } = entry;
    const allowed = (soFar: number) => {
      if (total + soFar > limits.unpacked || total + soFar > limits.ratio * bytes.length) throw tooLarge();
      if (soFar > limits.ratioFrom && soFar > limits.ratio * packed.length) throw tooLarge();
    };
    if (parts.has(name) || (method !== methods.stored && method !== methods.deflated)) throw damaged();
    const part = method === methods.stored ? packed : inflated(entry, allowed);
    allowed(part.length);
    total += part.length;
    parts.set(name, part);
  }
  return parts;
}

/** Unpacks a package, and stops as soon as it grows beyond any workbook. */
export function unzip(bytes: Uint8Array): Parts {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  refuseOthers(bytes, view);
  try {
    return unpacked(bytes, view);
  } catch (error) {
    throw error instanceof Unreadable ? error : damaged();
  }
}
