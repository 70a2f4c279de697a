import { outlineOf } from "../../../shared/given";
import { fromInternal, plainUnits, toInternal } from "../../../shared/unit";
import type { Kind } from "../../../shared/unittable";
import { call, catalogue } from "../../../src/catalogue";
import { near } from "../../within";

const [us, si] = [plainUnits("US"), plainUnits("SI")];
/** Of a temperature the zero is nobody's: compared as it stands above −300 °C, so that 1e-9 of it means something. */
const lifted = (kind: Kind, value: number): number => (kind === "temperature" ? value + 300 : value);

/** The same question asked in plain US and in plain SI numbers gives one and the same quantity, to 1e-9. */
export function systemsAgree(name: string, ...typed: (number | string | undefined)[]): void {
  const contract = catalogue.find((c) => c.name === name)!;
  const { args } = outlineOf(contract);
  const inSI = typed.map((n, i) => {
    const { kind } = args[i][1];
    return typeof n === "number" && kind ? fromInternal(toInternal(n, us[kind]), si[kind]) : n;
  });
  const answer = (values: typeof typed, system: string) => {
    const cells = args.map((_, i) => (values[i] === undefined ? undefined : [[values[i]]]));
    return call(contract, [...cells, [[system]]])[0][0] as number;
  };
  const kind: Kind = contract.returns.of.kind;
  const internal = lifted(kind, toInternal(answer(typed, "US"), us[kind]));
  near(lifted(kind, toInternal(answer(inSI, "SI"), si[kind])), internal);
}
