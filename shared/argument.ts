import * as z from "zod/mini";
import * as message from "./message";
import { type Cell, handedOn, isFault, said } from "./outcome";
import { as, type Quantity } from "./quantity";
import { plainText, quoted } from "./quoted";
import { isoDate, readDate } from "./serial";
import { hasComma, readTyped } from "./typed";
import { dimensionOf, findUnit, plainUnits, toInternal, type Unit, type Units } from "./unit";
import type { Kind } from "./unittable";

export type Range = readonly [least: number, most: number];

/** One argument, setting or result: its words, its quantity, and how a cell becomes its value. */
export interface Arg<T = any> {
  readonly label: string;
  /** As a person would type it under US units. */
  readonly example: unknown;
  readonly kind?: Kind;
  /** The allowed range in internal units. A plain number inside it needs no further check. */
  readonly range?: Range;
  readonly choices?: readonly string[];
  readonly optional?: true;
  /** The value of an optional argument left out, in internal units. */
  readonly otherwise?: number;
  /** Reads one filled cell, or throws Trouble that names the argument. */
  readonly read: (cell: Cell, units: Units) => T;
  /** Reads every cell of the argument at once: columns, tables, a chamber of two cells. */
  readonly take?: (cells: readonly (readonly Cell[])[], units: Units) => T;
  /** An example to type, for the message when the argument is missing. */
  readonly sample: (units: Units) => string;
  /** The cell of a result, where that is no plain number of one kind. */
  readonly show?: (value: any, units: Units) => number | string;
  /** A value in words for the working, where it is no plain number. */
  readonly say?: (value: any, units: Units) => string;
}

export type Value<A> = A extends Arg<infer T> ? T : never;
export type Values<A> = { [K in keyof A]: Value<A[K]> };

const us = plainUnits("US");

export const isBlank = (cell: Cell): cell is null | undefined | "" =>
  cell === null || cell === undefined || cell === "" || (typeof cell === "string" && cell.trim() === "");

/** Whether 0 counts as blank: some spreadsheets hand blank cells in as 0, and this argument cannot be 0. */
export const isEmpty = (cell: Cell, arg: Arg, units: Units): boolean => {
  if (isBlank(cell)) return true;
  if (cell !== 0) return false;
  if (!arg.kind) return true;
  if (!arg.range) return false;
  const zero = units[arg.kind].shift * units[arg.kind].factor;
  return zero < arg.range[0];
};

/** What a cell says, as words. */
export const words = (cell: Cell): string => (typeof cell === "boolean" ? String(cell).toUpperCase() : String(cell).trim());

/** The same for a message. */
export const shown = (cell: Cell): string => quoted(words(cell));

/** The number a cell states, in internal units, with the unit it was typed in. */
export function readQuantity(cell: Cell, label: string, kind: Kind, example: number, units: Units): { value: number; unit?: Unit } {
  const dimension = dimensionOf(kind);
  if (isFault(cell)) throw handedOn(cell);
  if (typeof cell === "number" && Number.isFinite(cell)) return { value: toInternal(cell, units[kind]) };
  const text = shown(cell);
  if (typeof cell !== "string") throw message.notQuantity(label, text, kind, dimension, example, units);
  if (kind === "money" && /[^\d\s.,+-]/.test(text) && /\d/.test(text)) throw message.currency(label, text);
  const whole = plainText(cell);
  if (hasComma(whole)) throw message.comma(label, text);
  const typed = readTyped(whole);
  if (!typed || !Number.isFinite(typed.number)) throw message.notQuantity(label, text, kind, dimension, example, units);
  if (!typed.rest) return { value: toInternal(typed.number, units[kind]) };
  const unit = findUnit(dimension, typed.rest);
  if (!unit) throw message.unknownUnit(label, text, typed.rest, dimension);
  return { value: toInternal(typed.number, unit), unit };
}

/** A range as its definition states it, in plain US units, turned to internal ones. */
const internal = (kind: Kind, [least, most]: Range): Range => [toInternal(least, us[kind]), toInternal(most, us[kind])];

/**
 * A number of one kind. Example and range are stated in plain US units; a range that leaves out zero makes
 * a zero count as a blank, which is how some spreadsheets hand blank cells in.
 */
export function quantity<K extends Kind>(kind: K, label: string, example: number, range: Range = [0, 1e12]): Arg<Quantity<K>> {
  const limits = internal(kind, range);
  const inside = z.number().check(z.minimum(limits[0]), z.maximum(limits[1]));
  const sampled = toInternal(example, us[kind]);
  return {
    label,
    example,
    kind,
    range: limits,
    sample: (units) => message.valueSuchAs(kind, sampled, units),
    read: (cell, units) => {
      const { value } = readQuantity(cell, label, kind, sampled, units);
      if (!inside.safeParse(value).success) throw message.outOfRange(label, value, shown(cell), kind, limits);
      return as<Quantity<K>>(value);
    },
  };
}

/** A whole number. */
export function count(label: string, example: number, range: Range = [0, 1e6]): Arg<Quantity<"count">> {
  const whole = quantity("count", label, example, range);
  return {
    ...whole,
    range: undefined,
    read: (cell, units) => {
      const value = whole.read(cell, units);
      if (!Number.isInteger(value)) throw message.notWhole(label, said("count", value));
      return value;
    },
  };
}

/** A day, as a serial number of the 1900 date system; ISO text such as 2026-03-14 is read too. */
export function date(label: string, example: string): Arg<Quantity<"date">> {
  return {
    label,
    example,
    kind: "date",
    range: [61, 2958465.999999],
    sample: () => `a date such as ${example}`,
    say: isoDate,
    read: (cell) => {
      if (isFault(cell)) throw handedOn(cell);
      const serial = typeof cell === "string" ? readDate(cell.trim()) : typeof cell === "number" ? cell : undefined;
      if (serial === undefined || !(serial < 2958466)) throw message.notDate(label, shown(cell));
      if (serial < 61) throw message.earlyDate(label);
      return as<Quantity<"date">>(serial);
    },
  };
}

/** An argument that may be left out; `otherwise`, in plain US units, is then its value. */
export function optional<T>(arg: Arg<T>): Arg<T | undefined>;
export function optional<T extends number>(arg: Arg<T>, otherwise: number): Arg<T>;
export function optional(arg: Arg, otherwise?: number): Arg {
  return { ...arg, optional: true, otherwise: otherwise === undefined || !arg.kind ? otherwise : toInternal(otherwise, us[arg.kind]) };
}
