const numberOf = (typed: string): number => (/^[-+]?\d*[.,]?\d+$/.test(typed.trim()) ? Number(typed.trim().replace(",", ".")) : Number.NaN);

/** Numbers as they are typed into the fields of a step. */
export class Entries {
  /** What stands in a field that is no number, by its name. */
  readonly wrong = new Map<string, string>();

  /** The number that was typed; undefined where it is none that the field takes, which then says so. */
  take(field: string, typed: string, isGood: (number: number) => boolean): number | undefined {
    const number = numberOf(typed);
    if (isGood(number)) {
      this.wrong.delete(field);
      return number;
    }
    this.wrong.set(field, typed);
    return undefined;
  }
}
