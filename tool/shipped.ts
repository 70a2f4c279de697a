import type { Plugin } from "esbuild";

const shipped = new Set<string>();

const packageOf = (path: string): string | undefined => /^(?:.*\/)?node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(path)?.[1];

/** Notes every package with code in a bundle: only the bundler knows. */
export const noting: Plugin = {
  name: "noting",
  setup({ initialOptions, onEnd }) {
    initialOptions.metafile = true;
    onEnd(({ metafile }) => {
      for (const { inputs } of Object.values(metafile?.outputs ?? {}))
        for (const [path, { bytesInOutput }] of Object.entries(inputs)) if (bytesInOutput) noteFile(path);
    });
  },
};

/** Notes the package of a file that is served as it is. */
export function noteFile(path: string): void {
  const name = packageOf(path);
  if (name) shipped.add(name);
}

/** The packages noted since this program began, by name. */
export const shippedPackages = (): string[] => [...shipped].sort();
