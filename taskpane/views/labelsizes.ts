import { dequal } from "dequal";
import { capital } from "../../shared/capital";
import type { SheetHost } from "../../shared/host";
import { findPart, writePart } from "../../shared/part";
import type { System } from "../../shared/unittable";
import { type LabelDocument, labelsForm, type Typed } from "../../src/labels/part";
import { type LabelSizes, sizeNames, sizesSlip } from "../../src/labels/sizes";
import { answers } from "../../src/run/answers";
import type { Sources } from "../sources";

const keptName = "porewise:label sizes";

/** What this browser printed last: for a workbook that has no sizes yet. */
function ofBrowser(system: System): Typed | undefined {
  try {
    const kept = JSON.parse(localStorage.getItem(`${keptName} ${system}`) ?? "null");
    const read = labelsForm.schema.safeParse({ [system]: kept });
    return read.success ? read.data[system] : undefined;
  } catch {
    return undefined;
  }
}

function toBrowser(system: System, typed: Typed): void {
  try {
    localStorage.setItem(`${keptName} ${system}`, JSON.stringify(typed));
  } catch {
    // Without local storage the sizes are typed again in the next new workbook.
  }
}

const inWorkbook = (host: SheetHost) => findPart(labelsForm, (place) => host.readPart(place), new DOMParser());

/** The sizes that this workbook has, else those of this browser. */
export async function keptSizes(host: SheetHost, system: System): Promise<Typed | undefined> {
  const found = await inWorkbook(host).catch(() => undefined);
  return found?.document?.[system] ?? ofBrowser(system);
}

/** Keeps changed sizes in the workbook; returns in words what prevents it. */
export async function keepSizes(host: SheetHost, system: System, typed: Typed): Promise<string> {
  toBrowser(system, typed);
  try {
    const found = await inWorkbook(host);
    if (!found) return "This workbook has no room for label sizes: this browser keeps them.";
    const document: LabelDocument = { ...found.document, [system]: typed };
    if (dequal(document, found.document)) return "";
    const ended = await host.writePart(found.place, writePart(labelsForm, document, found.place));
    return ended.done ? "" : ended.words;
  } catch (error) {
    return (error as Error).message;
  }
}

/** What is wrong with the labels, and the field that it belongs to. */
export interface Slip {
  readonly field: string;
  readonly words: string;
}

/** Sizes that are numbers, not lengths. */
export const counts: readonly (keyof LabelSizes)[] = ["across", "down"];

/** The sizes as they are typed, or which one is wrong. */
export function sizesOf(typed: Typed, { shop, system }: Pick<Sources, "shop" | "system">): LabelSizes | Slip {
  const sizes: Partial<Record<keyof LabelSizes, number>> = {};
  for (const [field, label] of Object.entries(sizeNames) as [keyof LabelSizes, string][]) {
    const text = typed[field].trim();
    // A margin or a gap may be 0, which lengths of pieces may not.
    const size = counts.includes(field) || Number(text) === 0 ? Number(text || Number.NaN) : answers.length(text, label, shop);
    if (typeof size === "string") return { field, words: `${capital(size)}.` };
    if (Number.isNaN(size)) return { field, words: `Type the ${label}.` };
    sizes[field] = size;
  }
  return sizesSlip(sizes as LabelSizes, system) ?? (sizes as LabelSizes);
}
