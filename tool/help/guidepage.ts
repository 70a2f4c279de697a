import markdown from "markdown-it";
import { back, page, scrolled } from "./markup";

const headOf = (table: string): string => [...table.matchAll(/<th>(.+)<\/th>/g)].map(([, words]) => words).join(", ");

/** A guide of docs/ as a page of the help: whoever has the zip alone has no other. */
export function guidePage(text: string): { readonly title: string; readonly html: string } {
  const title = /^# (.+)$/m.exec(text)![1];
  const body = markdown()
    .render(text)
    .replace(/<table>[\s\S]*?<\/table>/g, (table) => scrolled(headOf(table), table))
    // Guides link each other as files of text; here they are pages.
    .replace(/href="([\w-]+)\.md"/g, 'href="$1.html"');
  return { title, html: page(title, `${back}\n${body}`) };
}
