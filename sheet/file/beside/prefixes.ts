/** Undeclared namespace prefixes, which text copied from another part brings along: no program reads such a part. */
export function withoutUndeclared(xml: string): string {
  const declared = new Set(["xml", "xmlns", ...[...xml.matchAll(/\sxmlns:(\w+)\s*=/g)].map(([, prefix]) => prefix)]);
  return xml.replace(/<(\/?)(?:(\w+):)?(\w[\w.-]*)((?:[^<>"']|"[^"]*"|'[^']*')*)>/g, (_, slash, prefix, name, rest: string) => {
    const kept = rest.replace(/\s+(\w+):[\w.-]+\s*=\s*(?:"[^"]*"|'[^']*')/g, (attribute, own) => (declared.has(own) ? attribute : ""));
    return `<${slash}${prefix && declared.has(prefix) ? `${prefix}:` : ""}${name}${kept}>`;
  });
}
