import type * as OSpreadsheet from "@odoo/o-spreadsheet";

export type Engine = Pick<typeof OSpreadsheet, "registries" | "helpers">;

/** Rounds what a number shows in fifteen digits: 1.005 is half a cent to a person, and a little less to a processor. */
function rounded(number: number, places: number, round: (n: number) => number): number {
  const [digits, power = "0"] = Math.abs(number).toPrecision(15).split("e");
  const whole = round(Number(`${digits}e${Number(power) + places}`));
  // So many places change nothing.
  if (!Number.isFinite(whole)) return number;
  const [wholeDigits, wholePower = "0"] = String(whole).split("e");
  return Math.sign(number) * Number(`${wholeDigits}e${Number(wholePower) - places}`);
}

/** The engine rounds 2.675 to 2.67 where other programs say 2.68: here a cent is the same cent. */
export function roundAsOthers({ registries, helpers }: Engine): void {
  const { functionRegistry } = registries;
  for (const [name, round] of Object.entries({ ROUND: Math.round, ROUNDUP: Math.ceil, ROUNDDOWN: Math.floor })) {
    const own = functionRegistry.content[name];
    functionRegistry.replace(name, {
      ...own,
      compute(value, places) {
        const number = helpers.toNumber(value as never, this.locale);
        const count = Math.trunc(helpers.toNumber((places ?? { value: 0 }) as never, this.locale));
        return { value: rounded(number, count, round), format: (value as { format?: string } | undefined)?.format };
      },
    });
  }
}
