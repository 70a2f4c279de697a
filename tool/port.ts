import { parseNumber } from "office-addin-cli";

/** The port asked for by `--port N`, `--port=N` or PORT; 3000 where nobody asks. */
export function portOf(args: readonly string[], variable: string | undefined): number {
  const at = args.findIndex((arg) => arg === "--port" || arg.startsWith("--port="));
  const typed = at < 0 ? variable || "3000" : args[at].includes("=") ? args[at].slice("--port=".length) : (args[at + 1] ?? "");
  const words = `${at < 0 ? "PORT" : "--port"} takes a number from 0 to 65535: “${typed}” is none.`;
  const port = parseNumber(typed, words);
  // parseNumber reads as far as it can: 3000abc is no port.
  if (port === undefined || String(port) !== typed.trim() || !Number.isInteger(port) || port < 0 || port > 65535) throw new Error(words);
  return port;
}
