import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DEMO } from '@leeway/demo';
import { afterAll, expect, test } from 'vitest';
import { main } from './main.ts';

const folder = mkdtempSync(join(tmpdir(), 'leeway-names-'));
afterAll(() => rmSync(folder, { recursive: true }));

const EVIL = `"><script>alert('x')</script>&<b onload=y>) Tj (`;

/** The made-up course with another name of its hole 3. */
function groundNamed(name: string): string {
  const path = join(folder, 'evil.geojson');
  const ground = JSON.parse(readFileSync(DEMO.ground, 'utf8')) as {
    features: { properties: Record<string, string> }[];
  };
  for (const { properties } of ground.features)
    if (properties['golf'] === 'hole' && properties['ref'] === '3') properties['name'] = name;
  writeFileSync(path, JSON.stringify(ground));
  return path;
}

async function chart(out: string): Promise<string> {
  let told = '';
  const io = { out: (text: string) => void (told += text), err: () => undefined };
  expect(await main(['chart', '--ground', groundNamed(EVIL), '--hole', '3', '--out', out], io)).toBe(0);
  expect(told).toContain(EVIL);
  return readFileSync(out, 'latin1');
}

test('a name that is written like a tag is text in an SVG', async () => {
  const svg = await chart(join(folder, 'hole.svg'));
  expect(svg).not.toMatch(/<script|<b[ >]/i);
  expect(svg).toContain('&lt;script&gt;');
  const outsideQuotes = (svg.match(/<[^>]*>/g) ?? []).map((tag) => tag.replace(/"[^"]*"/g, ''));
  for (const tag of outsideQuotes) expect(tag).not.toMatch(/\son\w+\s*=/i);
});

test('a name that is written like an operator is text in a PDF', async () => {
  const pdf = await chart(join(folder, 'hole.pdf'));
  expect(pdf.startsWith('%PDF-')).toBe(true);
  expect(pdf).not.toMatch(/\/(?:JavaScript|JS|OpenAction|AA|Launch)\b/);
  expect(pdf).not.toContain(') Tj (');
});
