import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Scene, Text } from '../marks.ts';
import { PALETTES } from '../palette.ts';
import { specimen } from '../testdata/specimen.ts';
import { cutOf } from '../text/faces.ts';
import { pdf } from './pdf.ts';

const scene: Scene = { ...specimen(), title: 'Salt & <Pepper>', description: 'Every kind of mark, “told” in words.' };
const texts = scene.marks.filter((m): m is Text => m.kind === 'text');
const bytes = await pdf(scene);
const raw = Buffer.from(bytes).toString('latin1');

afterEach(() => void vi.useRealTimers());

describe('the PDF of a scene', () => {
  test('has every text once, in letters that can be searched', async () => {
    const page = await (await getDocument({ data: Uint8Array.from(bytes) }).promise).getPage(1);
    const { items } = await page.getTextContent();
    const found = items.map((item) => ('str' in item ? item.str : '')).join('');
    const close = (words: string): string => words.replaceAll(' ', '');
    for (const { text } of texts) expect(close(found)).toContain(close(text));
    expect(close(found)).toHaveLength(close(texts.map((t) => t.text).join('')).length);
  });

  test('is one page of 0.75 pt a px, with its title and description', async () => {
    const document = await getDocument({ data: Uint8Array.from(bytes) }).promise;
    expect(document.numPages).toBe(1);
    expect((await document.getPage(1)).view).toEqual([0, 0, 225, 225]);
    const { info } = await document.getMetadata();
    expect(info).toMatchObject({
      Title: scene.title,
      Subject: scene.description,
      Language: 'en-GB',
      Creator: 'Leeway',
    });
    expect(await (await document.getPage(1)).getStructTree()).toMatchObject({
      children: [{ role: 'Figure', alt: scene.description }],
    });
  });

  test('embeds the letters used of each font, and no other font', () => {
    const cuts = new Set(texts.map((t) => cutOf(t.font)));
    const fonts = [...raw.matchAll(/\/Type \/FontDescriptor\n\/FontName \/([A-Z]{6}\+\S+)/g)].map((m) => m[1]);
    expect(new Set(fonts).size).toBe(cuts.size);
    expect(raw.match(/\/FontFile2 \d+ 0 R/g)).toHaveLength(cuts.size);
    expect(bytes.length).toBeLessThan(80_000);
  });

  test('has no clock in it: the same scene gives the same bytes on another day', async () => {
    vi.useFakeTimers({ toFake: ['Date'], now: new Date('2040-02-29') });
    expect(Buffer.from(await pdf(scene)).equals(bytes)).toBe(true);
    expect(raw).not.toMatch(/CreationDate|ModDate|D:\d{4}/);
    expect(Buffer.from(await pdf(scene, PALETTES.paper)).equals(bytes)).toBe(false);
  });

  test('a font that charts do not have is refused by name', async () => {
    const [text] = texts;
    if (!text) throw new Error('the specimen has no text');
    const marks = [{ ...text, font: { ...text.font, weight: 500 as const, face: 'serif' as const } }];
    await expect(pdf({ ...scene, marks })).rejects.toThrow(new RegExp('no font file for serif 500'));
  });
});
