import { type Arg, quantity } from "../../shared/argument";
import { as, type Quantity } from "../../shared/quantity";

/** "8:30", "8 AM", "8:30 pm". */
const clockTime = /^(\d{1,2})(?::(\d\d))?\s*([ap])\.?\s*m\.?$|^(\d{1,2}):(\d\d)$/i;

function hoursOf(typed: string): number | undefined {
  const found = clockTime.exec(typed.trim());
  if (!found) return undefined;
  const [, twelve, past = "0", half, full, minute = "0"] = found;
  if (full !== undefined) return Number(minute) < 60 ? Number(full) + Number(minute) / 60 : undefined;
  if (Number(twelve) < 1 || Number(twelve) > 12 || Number(past) > 59) return undefined;
  return (Number(twelve) % 12) + (half.toLowerCase() === "p" ? 12 : 0) + Number(past) / 60;
}

/** An hour of the day: 8, 8:30, 8 PM, or a clock time as spreadsheets keep it, a part of a day. */
export function hourArg(what: string, example: number): Arg<Quantity<"number">> {
  const hour = quantity("number", `hour at which ${what}`, example, [0, 24]);
  return {
    ...hour,
    read: (cell, units) => {
      const clock = typeof cell === "string" ? hoursOf(cell) : undefined;
      // A whole hour below 1 would be taken for a part of a day.
      if (clock !== undefined && clock <= 24) return as<Quantity<"number">>(clock < 1 ? clock / 24 : clock);
      return hour.read(cell, units);
    },
  };
}
