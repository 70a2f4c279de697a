import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { generateCustomFunctionsMetadata, type IFunction } from "custom-functions-metadata";
import { type Contract, parameters } from "../shared/contract";
import { stub } from "../shared/stub";
import { helpFile } from "./help";

/** What functions.json holds. */
export interface Metadata {
  readonly allowErrorForDataTypeAny: true;
  readonly functions: readonly IFunction[];
}

/** Where Excel's own help leads for a function. */
export const helpAddress = (host: string, contract: Contract): string => `${host}/${helpFile(contract)}`;

/** Command words of the macro language of Excel 4 that a name of letters alone could meet; from memory. */
const macroWords = new Set(
  `ABSREF ALERT ARGUMENT BEEP BREAK CALL CLEAR CLOSE COPY CUT DEREF DEMOTE DOCUMENTS DUPLICATE ECHO ELSE ERROR EVALUATE EXEC EXTRACT
  FCLOSE FILES FOPEN FOR FORMULA FPOS FREAD FREADLN FSIZE FULL FWRITE FWRITELN GOTO GRIDLINES GROUP HALT HELP HIDE HLINE HPAGE HSCROLL
  INITIATE INPUT INSERT JUSTIFY LEGEND LINKS MESSAGE MOVE NAMES NCHAR NEW NEXT NOTE OPEN OUTLINE OVERLAY PARSE PASTE PATTERNS PAUSE POKE
  PRECISION PRINT PROMOTE QUIT REFTEXT REGISTER RELREF REQUEST RESTART RESULT RESUME RETURN RUN SAVE SCALE SELECT SELECTION SERIES SIZE
  SORT SPLIT STEP STYLE TABLE TERMINATE TEXTREF UNDO UNGROUP UNHIDE UNREGISTER VLINE VOLATILE VPAGE VSCROLL WAIT WHILE WINDOWS WORKGROUP
  ZOOM`.split(/\s+/),
);

/** Columns of a sheet end at XFD, rows at 1,048,576. */
const isCellAddress = (name: string): boolean => {
  const [, column, row] = /^([A-Z]{1,3})(\d{1,7})$/.exec(name) ?? [];
  return column !== undefined && (column.length < 3 || column <= "XFD") && Number(row) >= 1 && Number(row) <= 1048576;
};

/** What Excel would refuse or misread in a function's name, which the generator does not see. */
export function nameTroubles(names: readonly string[]): string[] {
  const folded = names.map((name) => name.toUpperCase());
  return folded.flatMap((name, i) => [
    ...(/^[A-Z]{3}/.test(name) ? [] : [`${name}: a name begins with three letters or more`]),
    ...(isCellAddress(name) || /^R\d*C\d*$/.test(name) ? [`${name} reads as the address of a cell`] : []),
    ...(macroWords.has(name) ? [`${name} is a word of Excel 4's macro language`] : []),
    ...(folded.indexOf(name) < i ? [`${name} stands twice`] : []),
  ]);
}

const isAbsolute = (address = ""): boolean => URL.canParse(address) && new URL(address).protocol === "https:";

/** What would fail in Excel only: each function as declared, every argument and result a block of cells. */
export function functionTroubles(functions: readonly IFunction[], contracts: readonly Contract[]): string[] {
  const troubles = contracts.flatMap((contract) => {
    const made = functions.find(({ id }) => id === contract.name);
    if (!made) return [`${contract.name} is missing`];
    const wanted = parameters(contract).map(([name]) => name);
    const given = made.parameters.map(({ name }) => name);
    return [
      ...(given.join() === wanted.join() ? [] : [`${contract.name} takes ${given.join()} where ${wanted.join()} is due`]),
      ...made.parameters.flatMap(({ name, type, dimensionality, repeating }) =>
        type === "any" && dimensionality === "matrix" && !repeating ? [] : [`${contract.name}: ${name} is not a block of cells`],
      ),
      ...(made.result?.dimensionality === "matrix" ? [] : [`${contract.name} does not give a block of cells`]),
      ...(isAbsolute(made.helpUrl) ? [] : [`${contract.name}: the help address ${made.helpUrl} is not absolute https`]),
    ];
  });
  return [...nameTroubles(functions.map(({ name }) => name)), ...troubles];
}

/** Runs the official generator over the stub: it reads files only. */
async function generated(source: string): Promise<IFunction[]> {
  const folder = mkdtempSync(join(tmpdir(), "porewise-"));
  try {
    const file = join(folder, "stub.ts");
    writeFileSync(file, source);
    const { errors, metadataJson } = await generateCustomFunctionsMetadata(file);
    if (errors.length) throw new Error(`functions.json: ${errors.join("; ")}`);
    return JSON.parse(metadataJson).functions;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/**
 * functions.json of a catalogue on a host such as https://localhost:3000. Errors in cells are let in, so that
 * one bad row stays in its row; data types are not, which the generator would always ask for.
 */
export async function metadata(contracts: readonly Contract[], host: string): Promise<Metadata> {
  const functions = await generated(stub(contracts, (contract) => helpAddress(host, contract)));
  const troubles = functionTroubles(functions, contracts);
  if (troubles.length) throw new Error(`functions.json: ${troubles.join("; ")}`);
  return { allowErrorForDataTypeAny: true, functions };
}
