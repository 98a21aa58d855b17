/** Text that is safe to stand in a page as it is: markup written here, or foreign text escaped by `html`. */
export interface Html {
  readonly markup: string;
}

type Part = Html | string | number | readonly Html[] | undefined;

const ESCAPES: { readonly [character: string]: string } = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** A piece of a page. Strings put into it are escaped, pieces and lists of pieces stand as they are, `undefined` is nothing. */
export function html(texts: TemplateStringsArray, ...parts: readonly Part[]): Html {
  return { markup: texts.map((text, i) => text + (i < parts.length ? markupOf(parts[i]) : '')).join('') };
}

function markupOf(part: Part): string {
  if (part === undefined) return '';
  if (typeof part === 'string' || typeof part === 'number') {
    return String(part).replace(/[&<>"']/g, (character) => ESCAPES[character] ?? character);
  }
  return 'markup' in part ? part.markup : part.map((one) => one.markup).join('');
}
