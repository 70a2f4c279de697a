// Validates XML against a schema file: takes texts as JSON from standard input and prints the errors of each. A process of
// its own: the validator is an ES module that waits for its WebAssembly, which the test runner's module system cannot load.
import { readFileSync } from "node:fs";
import { XmlDocument, XmlLibError, XsdValidator } from "libxml2-wasm";
import { xmlRegisterFsInputProviders } from "libxml2-wasm/lib/nodejs.mjs";

const schemaFile = process.argv[2];
xmlRegisterFsInputProviders();
const validator = XsdValidator.fromDoc(XmlDocument.fromBuffer(readFileSync(schemaFile), { url: schemaFile }));

function errors(xml) {
  try {
    validator.validate(XmlDocument.fromString(xml));
    return [];
  } catch (error) {
    if (error instanceof XmlLibError) return error.details.map(({ line, message }) => `line ${line}: ${message.trim()}`);
    throw error;
  }
}

console.log(JSON.stringify(JSON.parse(readFileSync(0, "utf8")).map(errors)));
