import { addReading, enter } from "../../src/run/progress";
import type { Run, Step } from "../../src/run/schema";
import type { Field } from "../../src/run/steplines";

const numberOf = (typed: string): number => (/^[-+]?\d*[.,]?\d+$/.test(typed.trim()) ? Number(typed.trim().replace(",", ".")) : Number.NaN);

/** Numbers as they are typed into the fields of a step. */
export class Entries {
  /** Text of the fields that is no number, by field name. */
  readonly wrong = new Map<string, string>();

  /** The number that was typed; undefined where the field does not accept it, which is then noted in `wrong`. */
  private take(field: string, typed: string, isGood: (number: number) => boolean): number | undefined {
    const number = numberOf(typed);
    if (isGood(number)) {
      this.wrong.delete(field);
      return number;
    }
    this.wrong.set(field, typed);
    return undefined;
  }

  /** The run with the number of a field, or without it where the field was emptied; undefined where it is no number from 0 on. */
  entered(run: Run, { name }: Field, typed: string): Run | undefined {
    const isEmpty = typed.trim() === "";
    const number = this.take(name, typed, (one) => isEmpty || one >= 0);
    return number === undefined ? undefined : enter(run, name, isEmpty ? undefined : number);
  }

  /** The run with a gauge reading taken at a moment; many dials print a minus sign, which counts for nothing. */
  read(run: Run, { id }: Step, typed: string, moment: number): Run | undefined {
    const number = this.take("gauge", typed, (one) => !Number.isNaN(one));
    return number === undefined ? undefined : addReading(run, id, moment, Math.abs(number));
  }
}
