import { escapeHtml } from '../html.ts';

/** As much of an OpenAPI document as the page shows. */
export interface ApiDocument {
  readonly info: { readonly title: string; readonly description?: string };
  readonly paths: { readonly [url: string]: { readonly [method: string]: Operation } };
}

interface Operation {
  readonly summary?: string;
  readonly tags?: readonly string[];
}

/** The API as a page: every address with what it does, by what it is about. It needs no script and no style. */
export function apiPage({ info, paths }: ApiDocument): string {
  const operations = Object.entries(paths).flatMap(([url, methods]) =>
    Object.entries(methods).map(([method, { summary = '', tags = ['other'] }]) => ({
      url,
      method,
      summary,
      tag: tags[0] ?? '',
    })),
  );
  const groups = Map.groupBy(operations, ({ tag }) => tag);
  const parts = [...groups].map(
    ([tag, of]) =>
      `<h2>${escapeHtml(tag)}</h2>\n<table>\n${of
        .map(
          ({ url, method, summary }) =>
            `<tr><td>${escapeHtml(method.toUpperCase())}</td><td><code>${escapeHtml(url)}</code></td><td>${escapeHtml(summary)}</td></tr>`,
        )
        .join('\n')}\n</table>`,
  );
  return `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<title>${escapeHtml(info.title)}: the API</title>
<h1>${escapeHtml(info.title)}: the API</h1>
<p>${escapeHtml(info.description ?? '')} <a href="/api/openapi.json">The whole of it as an OpenAPI document</a>.</p>
${parts.join('\n')}
</html>
`;
}
