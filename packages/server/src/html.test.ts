import { expect, test } from 'vitest';
import { html } from './html.ts';

test('foreign text is escaped in content and in attributes', () => {
  const name = `<script>"it's" & more`;
  const escaped = '&lt;script&gt;&quot;it&#39;s&quot; &amp; more';
  expect(html`<p title="${name}">${name}</p>`.markup).toBe(`<p title="${escaped}">${escaped}</p>`);
});

test('pieces and lists of pieces stand as they are, and nothing is nothing', () => {
  const items = [html`<li>${1}</li>`, html`<li>${'<'}</li>`];
  expect(html`<b>${items}</b>`.markup).toBe('<b><li>1</li><li>&lt;</li></b>');
  expect(html`<b>${undefined}${html`<hr />`}</b>`.markup).toBe('<b><hr /></b>');
});
