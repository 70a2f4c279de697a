import { fractionText } from "../shared/fraction";
import { fractions, hourOrClock, plainNumber } from "../shared/numberformat";

/** A number format that files have and the engine lacks. */
export interface Lacked {
  /** As files write it. */
  readonly file: string;
  /** The stand-in given to the engine: one of its own formats, which shows decimals where only the engine formats. */
  readonly standIn: string;
  readonly show: (value: number) => string;
  /** A clock time may be typed. */
  readonly takesTimes: boolean;
}

/** Clock time of a part of a day. */
function clock(share: number): string {
  const minutes = Math.round(share * 1440) % 1440;
  const hour = Math.floor(minutes / 60);
  return `${hour % 12 || 12}:${String(minutes % 60).padStart(2, "0")} ${hour < 12 ? "AM" : "PM"}`;
}

/** A number as cells without a format show it. */
const plain = (value: number): string => String(Number(value.toPrecision(11)));

const upTo = (digits: number) => (value: number) => fractionText(value, 10 ** digits - 1);
const partsOf = (bottom: number) => (value: number) => fractionText(value, bottom, true);

const shows: readonly (readonly [file: string, show: (value: number) => string])[] = [
  [fractions, upTo(2)],
  [plainNumber, plain],
  [hourOrClock, (value) => (value >= 0 && value < 1 ? clock(value) : plain(value))],
  ["# ?/?", upTo(1)],
  ["# ???/???", upTo(3)],
  ["# ?/2", partsOf(2)],
  ["# ?/4", partsOf(4)],
  ["# ?/8", partsOf(8)],
  ["# ??/16", partsOf(16)],
  ["# ??/32", partsOf(32)],
];

/** Empty texts at its end tell a stand-in from every other format, and from other stand-ins. */
const lacked: readonly Lacked[] = shows.map(([file, show], i) => ({
  file,
  standIn: `0.0###${'""'.repeat(i + 1)}`,
  show,
  takesTimes: file === hourOrClock,
}));

const byStandIn = new Map(lacked.map((one) => [one.standIn, one]));
const byFile = new Map(lacked.map((one) => [one.file, one]));

/** What stands behind a format of the engine, if it stands in for another. */
export const standsFor = (format: string | undefined): Lacked | undefined => (format ? byStandIn.get(format) : undefined);

/** A format of a file as the engine is given it. */
export const toEngine = (file: string): string => byFile.get(file)?.standIn ?? file;

/** A format of the engine as a file is given it. */
export const toFile = (format: string): string => byStandIn.get(format)?.file ?? format;
