import { readFileSync } from "node:fs";
import type { Frame, Page } from "playwright-core";

const axe = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");

/** What axe objects to: each rule with the elements that break it, and why. The policy of a page binds no script that the driver brings. */
export async function objections(shown: Frame | Page): Promise<[rule: string, elements: string[]][]> {
  await shown.evaluate(axe);
  const { violations } = await shown.evaluate(() => (globalThis as any).axe.run(document, { resultTypes: ["violations"] }));
  return violations.map(({ id, nodes }: any) => [id, nodes.map((node: any) => `${node.html} ${node.failureSummary}`)]);
}
