/** What a static host must send with the files, in the form that several hosts read from a file called `_headers`. */
const wanted: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  // Excel on the web fetches the functions from an origin of its own.
  "*": { "Access-Control-Allow-Origin": "*", "X-Content-Type-Options": "nosniff" },
  // Such hosts have everything asked for anew by themselves; icons Excel wants to keep.
  "icons/*": { "Cache-Control": "public, max-age=86400" },
};

export const headersFile = "_headers";

/** The file for a folder that lies under this address. */
export function headersOf(host: string): string {
  const path = new URL(host).pathname.replace(/\/+$/, "");
  return Object.entries(wanted)
    .map(([files, headers]) =>
      [`${path}/${files}`, ...Object.entries(headers).map(([name, value]) => `  ${name}: ${value}`), ""].join("\n"),
    )
    .join("");
}
