import { dequal } from "dequal";
import type { SheetHost } from "../../shared/host";
import { findPart, writePart } from "../../shared/part";
import type { System } from "../../shared/unittable";
import { type LabelDocument, labelsForm, type Typed } from "../../src/labels/part";

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
    // A browser that keeps nothing asks again in the next new workbook.
  }
}

const inWorkbook = (host: SheetHost) => findPart(labelsForm, (place) => host.readPart(place), new DOMParser());

/** The sizes that this workbook has, else those of this browser. */
export async function keptSizes(host: SheetHost, system: System): Promise<Typed | undefined> {
  const found = await inWorkbook(host).catch(() => undefined);
  return found?.document?.[system] ?? ofBrowser(system);
}

/** Keeps sizes in the workbook, where they are others than it has; what hinders it, in words. */
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
