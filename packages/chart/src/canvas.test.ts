import { describe, expect, test } from 'vitest';
import { type Brush, paint } from './canvas.ts';
import { PALETTES } from './palette.ts';
import { specimen } from './testdata/specimen.ts';
import { widthPx } from './text/measure.ts';

/** A brush that writes down what it is told: each call with its arguments, and what was set when ink went down. */
function recorder(letterPx = 10): { brush: Brush; calls: string[] } {
  const calls: string[] = [];
  const state: Record<string, unknown> = {};
  const inked = /^(?:fill|stroke)/;
  const brush = new Proxy(state, {
    set: (_, name, value) => Reflect.set(state, name, value),
    get: (_, name) => {
      if (name === 'measureText') return (text: string) => ({ width: letterPx * text.length });
      return (...given: unknown[]) => {
        const ink = String(name).startsWith('fill') ? state['fillStyle'] : state['strokeStyle'];
        calls.push(
          `${String(name)}(${given.join()})${inked.test(String(name)) ? ` ${String(ink)} ${String(state['globalAlpha'])}` : ''}`,
        );
      };
    },
  }) as unknown as Brush;
  return { brush, calls };
}

const named = (calls: readonly string[], name: string): string[] => calls.filter((c) => c.startsWith(`${name}(`));

describe('the canvas painter', () => {
  const scene = specimen();

  test('inks every mark once in its colour and strength, and gives the context back as it was', () => {
    const { brush, calls } = recorder();
    paint(brush, scene, { palette: PALETTES.sun });
    const kinds = (kind: string) => scene.marks.filter((m) => m.kind === kind);
    const open = scene.marks.filter((m) => m.kind === 'dots' && m.lineWidthPx !== undefined).length;
    expect(named(calls, 'fill')).toHaveLength(kinds('fill').length + kinds('dots').length - open);
    expect(named(calls, 'stroke')).toHaveLength(kinds('stroke').length + open);
    expect(named(calls, 'fillText')).toHaveLength(kinds('text').length);
    expect(calls).toContain(`stroke() ${PALETTES.sun.sea} 0.8`);
    expect(calls).toContain(`fillText(16 · 19,0,0) ${PALETTES.sun.buoy} 1`);
    expect(named(calls, 'save').length).toBe(named(calls, 'restore').length);
    expect([calls[0], calls.at(-1)]).toEqual(['save()', 'restore()']);
  });

  test('dense dots are one path', () => {
    const { brush, calls } = recorder();
    paint(brush, scene, { palette: PALETTES.paper, layers: ['pattern'] });
    expect(named(calls, 'arc')).toHaveLength(240 + 3 + 2);
    expect(named(calls, 'beginPath')).toHaveLength(3);
  });

  test('paints only the layers asked for, and all of them are the whole', () => {
    const painted = (layers?: readonly ('tint' | 'lines' | 'pattern' | 'names')[]): string[] => {
      const { brush, calls } = recorder();
      paint(brush, scene, { palette: PALETTES.paper, ...(layers ? { layers } : {}) });
      return calls.slice(2, -1);
    };
    const ground = painted(['tint', 'lines']);
    const rest = painted(['pattern', 'names']);
    expect([...ground, ...rest]).toEqual(painted());
    expect(ground.length).toBeGreaterThan(10);
    expect(named(ground, 'fillText')).toEqual([]);
  });

  test('sets a line as wide as it was measured, whatever font the context has', () => {
    const { brush, calls } = recorder(7);
    const mark = scene.marks.find((m) => m.kind === 'text' && m.anchor === 'end');
    if (mark?.kind !== 'text') throw new Error('the specimen has no such text');
    paint(brush, { ...scene, marks: [mark] }, { palette: PALETTES.paper, pixelRatio: 2 });
    const measured = widthPx(mark.text, mark.font);
    expect(named(calls, 'scale')).toEqual(['scale(2,2)', `scale(${measured / (7 * mark.text.length)},1)`]);
    expect(named(calls, 'translate')).toEqual([
      `translate(${mark.at.x},${mark.at.y})`,
      `translate(${-Math.round(100 * measured) / 100},0)`,
    ]);
  });
});
