import { counted } from "../../shared/host";
import { isoDate, readDate, usDate } from "../../shared/serial";
import { plainUnits } from "../../shared/unit";
import { type Label, pieceLabels, tubLabel } from "../../src/labels/labellines";
import { answers } from "../../src/run/answers";
import type { Sources } from "../sources";

/** A day as people write it where the labels go. */
const written = (serial: number, { system }: Sources): string => (system === "US" ? usDate(serial) : isoDate(serial));

/** The tub as My Shop and the Resin Book have it. */
export function tubOf(sources: Sources): Label {
  const {
    shop,
    system,
    today: { color },
  } = sources;
  const day = (value: unknown) => (typeof value === "number" ? written(value, sources) : undefined);
  const mixed = answers.holds("resin mixed on", shop);
  const rate = answers.holds("resin dye rate", shop);
  const until = typeof mixed === "number" ? answers.ask("EXPIRY", { mixed }, shop)[0][0] : undefined;
  return tubLabel({
    color,
    mixedOn: day(mixed),
    useBy: day(until),
    ...(typeof rate === "number" ? { dyeRate: `${Number(rate.toPrecision(3))} ${plainUnits(system).strength.name}` } : {}),
  });
}

/** Every piece on Blanks that is in the plan, numbered from the first. */
export function tokensOf(sources: Sources, first: number, day: string): Label[] {
  const { shop, blanks } = sources;
  const unit = String(answers.holds("scale reads", shop) ?? "g");
  const rows = blanks
    .filter(({ isLeftOut }) => !isLeftOut)
    .map(({ name, wood, count, dry, color }) => ({
      name,
      wood,
      count,
      color,
      ...(dry ? { dry: `${Number(dry.toPrecision(4))} ${unit}` } : {}),
    }));
  const serial = readDate(day);
  return pieceLabels(rows, first, serial === undefined ? day : written(serial, sources));
}

/** What there is to label, and what is missing for it. */
export function standingOf({ blanks, shop }: Sources): string {
  const out = blanks.filter(({ isLeftOut }) => isLeftOut);
  const sum = (rows: typeof blanks) => rows.reduce((all, { count }) => all + count, 0);
  const pieces = sum(blanks) - sum(out);
  return [
    pieces ? `${counted(pieces, "piece", "pieces")} on Blanks, one label each.` : "Blanks has no pieces yet: type them there first.",
    out.length
      ? `${counted(sum(out), "piece has", "pieces have")} no label: Blanks leaves ${out.map(({ name }) => name).join(", ")} out of the plan.`
      : "",
    Number(answers.holds("resin on hand", shop) ?? 0) > 0 ? "" : "My Shop has no resin on hand: the tub’s days are left to write by hand.",
  ]
    .filter(Boolean)
    .join(" ");
}
