import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { ShotDocument } from '@leeway/contract';
import { CALM } from '@leeway/engine';
import { parseSync } from 'vite';
import { describe, expect, it } from 'vitest';
import { shotOf } from './testdata/shot.ts';
import {
  behindWords,
  dateWords,
  driftWords,
  faultWords,
  finishesOf,
  landsWords,
  movedWords,
  othersOf,
  ownCostWords,
  ownOptionWords,
  plainLine,
  reasonsOf,
  spotLine,
  sumOf,
} from './words.ts';
import { scoresWords, settleWords, sureShort } from './sure/words.ts';
import { dayWords, windAlong, windSaid, windSpeed } from './day/words.ts';

const SOURCES = import.meta.dirname;
/** Attributes that are shown or spoken. */
const SPOKEN = /^(?:aria-(?:label|description|roledescription|valuetext|placeholder)|title|alt|placeholder|label)$/;

interface Node {
  readonly type: string;
  readonly [key: string]: unknown;
}

const isNode = (value: unknown): value is Node => typeof value === 'object' && value !== null && 'type' in value;

const childrenOf = (node: Node): Node[] => Object.values(node).flat().filter(isNode);

/** Texts with a letter in them that an expression may give: its strings, its templates, the branches of its conditions. */
function textsIn(node: Node): string[] {
  switch (node.type) {
    case 'Literal':
      return typeof node['value'] === 'string' ? [node['value']] : [];
    case 'TemplateLiteral':
      return (node['quasis'] as { value: { cooked: string } }[]).map(({ value }) => value.cooked);
    case 'JSXExpressionContainer':
    case 'ConditionalExpression':
    case 'LogicalExpression':
    case 'BinaryExpression':
      return [node['expression'], node['consequent'], node['alternate'], node['left'], node['right']]
        .filter(isNode)
        .flatMap(textsIn);
    default:
      return [];
  }
}

/** What a page written in this source would show or speak that is not from elsewhere. */
function visibleTexts(file: string, source: string): string[] {
  const found: string[] = [];
  const visit = (node: Node, parent: Node | undefined): void => {
    if (node.type === 'JSXText') found.push(String(node['value']));
    if (node.type === 'JSXExpressionContainer' && parent?.type !== 'JSXAttribute') found.push(...textsIn(node));
    if (
      node.type === 'JSXAttribute' &&
      SPOKEN.test(String((node['name'] as { name?: string }).name)) &&
      isNode(node['value'])
    ) {
      found.push(...textsIn(node['value']));
    }
    for (const child of childrenOf(node)) visit(child, node);
  };
  visit(parseSync(file, source).program as unknown as Node, undefined);
  return found.map((text) => text.trim()).filter((text) => /\p{L}/u.test(text));
}

describe('visible words', () => {
  const files = readdirSync(SOURCES, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.tsx'));

  it('stand in files of words alone', () => {
    expect(files.length).toBeGreaterThan(20);
    const found = files.flatMap((name) =>
      visibleTexts(name, readFileSync(join(SOURCES, name), 'utf8')).map((text) => `${name}: ${text}`),
    );
    expect(found).toEqual([]);
  });

  it.each([
    ['text', 'const a = <p>Spot</p>;', ['Spot']],
    ['a label', 'const a = <svg aria-label="Chart" class="sheet" />;', ['Chart']],
    ['a label in braces', 'const a = <img alt={`hole ${n}`} />;', ['hole']],
    ['a branch', "const a = <p>{here ? 'yes' : other}</p>;", ['yes']],
    ['nothing', 'const a = <p class="spot" id={`tab-${n}`}>{WORDS.spot} ‹</p>;', []],
  ])('are found by the scan: %s', (_, source, expected) => {
    expect(visibleTexts('a.tsx', source)).toEqual(expected);
  });
});

describe('the words of a shot', () => {
  it('tell a spot by the flag when the shot goes for it, else by how far out it is', () => {
    expect(spotLine(shotOf(), 'yd')).toBe('Spot 5 yd left of the flag and 2 yd short of it.');
    const { atFlag: _, ...layUp } = shotOf();
    const spot = { ...layUp.spot, beyondFlagM: -100.584, rightOfFlagM: 9.144 };
    expect(spotLine({ ...layUp, toFlagM: 292.608, spot }, 'yd')).toBe('Spot 210 yd out, 10 yd right of the flag line.');
    expect(spotLine({ ...layUp, toFlagM: 300, spot: { ...spot, rightOfFlagM: 0.2 } }, 'm')).toBe(
      'Spot 199 m out, on the flag line.',
    );
  });

  it('leave a drift of nothing unsaid', () => {
    expect(driftWords(shotOf(), 'yd')).toBe('Start it 2 yd left; good strikes come back.');
    expect(driftWords({ ...shotOf(), aim: shotOf().spot }, 'yd')).toBe('');
  });

  it('add up as printed, to what the shot plays', () => {
    const number = {
      toLandingM: 118.02,
      windM: 4.1,
      slopeM: 1.5,
      airM: -1.4,
      lieM: 0,
      playsM: 122.22,
      doubt: { wind: { lo80: 2.7, hi80: 5.5 } },
    };
    const { lines, total } = sumOf({ ...shotOf(), todaysNumber: number }, 'yd');
    expect(lines.map(({ words, figure }) => `${words} ${figure}`)).toEqual([
      'lands 129',
      'wind +5',
      'up +2',
      'air −2',
      'lie 0',
    ]);
    expect(total).toBe('134');
    expect(lines[1]?.between).toBe('+3 to +6');
  });

  it('say the wind along and across the shot, and the day', () => {
    const shot = { ...shotOf(), from: { lon: 0, lat: 54 }, aim: { ...shotOf().aim, lon: 0, lat: 54.001 } };
    const from = (fromDeg: number) => windAlong(shot, { ...CALM, speedMps: 5, fromDeg });
    expect([0, 40, 90, 180, 300].map(from)).toEqual([
      'into',
      'into, off the right',
      'off the right',
      'helping',
      'into, off the left',
    ]);
    expect(windSpeed(0, 'yd')).toBe('calm');
    expect(windSpeed(4.4704, 'yd')).toBe('10 mph');
    expect(windSpeed(5.4, 'm')).toBe('5.5 m/s');
    expect(windSaid({ ...CALM, speedMps: 4.4704, fromDeg: 240, heightM: 2 }, 'yd')).toBe(
      '10 mph from 240 degrees, felt',
    );
    expect(dayWords(CALM, 'yd')).toBe('Calm air; level ground, 20 °C, normal firmness assumed.');
    expect(dayWords(CALM, 'yd', 'spot heights')).toContain('; heights of the ground from its spot heights, 20 °C');
  });

  it('give a hundred balls', () => {
    const finishes = finishesOf(shotOf());
    expect(finishes.reduce((sum, { balls }) => sum + balls, 0)).toBe(100);
    expect(finishes.at(-1)).toEqual({ place: 'penalty area', ground: 'water', balls: 6 });
  });

  it('name the plain line, and its club only when it is another', () => {
    const shot = shotOf();
    expect(plainLine(shot)).toEqual({ wide: 'straight ', words: 'at the flag', strokes: '3.66' });
    const other: ShotDocument = { ...shot, atFlag: { ...shot.atFlag!, option: { club: '9-iron', swing: 'full' } } };
    expect(plainLine(other)?.words).toBe('at the flag, 9-iron, full');
  });

  it('keep a club’s number and its name on one line', () => {
    expect(reasonsOf(shotOf())).toEqual([
      "Straight at the flag 3.66, because 10 in 100 of this player's 8-\u2060irons finish in Tolvane Creek; from the spot 6.".replace(
        '’',
        "'",
      ),
    ]);
  });

  it('say a tie as a tie', () => {
    const shot = shotOf();
    const [first, second] = othersOf(
      { ...shot, alternatives: shot.alternatives.map((a, i) => ({ ...a, costsMore: i === 0 ? 0.019 : 0.06 })) },
      'yd',
    );
    expect([first?.costs, first?.why, second?.costs]).toEqual(['a tie', '', '0.06']);
    expect(first?.what).toBe('9-iron, full, 5 yd left and 13 yd short');
  });

  it('read figures and words in turn', () => {
    const read = landsWords(shotOf(), 'yd')
      .map(({ words, figure }) => words ?? figure)
      .join('');
    expect(read).toBe('Lands 129, finishes 132 yd.');
  });

  it('say how sure, and by how many balls', () => {
    expect(sureShort(shotOf())).toBe('38 balls, sure to ±0.08');
    expect(sureShort({ ...shotOf(), evidence: 'prior' })).toBe('no balls measured, sure to ±0.08');
    expect(sureShort({ ...shotOf(), evidence: 'stated', doubt: { se: 0, balls: 0, lo80: 0, hi80: 0 } })).toBe('');
  });
});

describe('other words', () => {
  it('tell where a handle has gone', () => {
    expect(movedWords(-2.7432, 1.8288, 'yd')).toBe('3 yd left of where it was and 2 yd on');
    expect(movedWords(0, -1.8288, 'yd')).toBe('2 yd back from where it was');
    expect(movedWords(0.1, -0.2, 'yd')).toBe('where it was');
  });

  it('tell what a spot of one’s own costs', () => {
    const cost = {
      spot: { eastM: 0, northM: 0 },
      option: { club: '9I', swing: 'full' },
      expectedStrokes: 3.6,
      costsMore: 0.061,
    };
    expect(ownOptionWords(cost, 0.4, 'yd')).toBe('Your spot: 9-iron, full.');
    expect(ownOptionWords(cost, -5.4864, 'yd')).toBe('Your spot: 9-iron, full, ends 6 yd short of it.');
    expect(ownOptionWords(undefined, 0, 'yd')).toBe('Your spot: being worked out.');
    expect(ownCostWords(cost)).toBe('0.06 more');
    expect(ownCostWords({ ...cost, costsMore: -0.001 })).toBe('0.00 more, a tie');
  });

  it('tell the balls that are drawn', () => {
    const ball = (carryM: number, mishit = false) => ({ carryM, mishit, date: '2025-06-03' });
    expect(
      behindWords(
        [100, 110, 120, 130, 140].map((m) => ball(m)),
        'm',
      ),
    ).toBe(
      '5 balls hit on 3 June 2025. Half of the good strikes carry 110 to 130 m, the middle one 120. No mishits among them.',
    );
    expect(behindWords([ball(100, true)], 'm')).toBe('1 ball hit on 3 June 2025. 1 of them mishit, drawn as rings.');
    expect(behindWords([], 'm')).toBe('No balls of this club and swing are kept.');
  });

  it('leave a date that is none as it stands', () => {
    expect(['2025-12-01', 'May'].map(dateWords)).toEqual(['1 December 2025', 'May']);
  });

  it('tell a fault in one line with what was kept', () => {
    expect(faultWords('the file does not read. ', true)).toBe(
      'The file does not read. The plan on this page is kept as it last stood.',
    );
  });
});

describe('how sure', () => {
  const plain = (words: string): string => words.replaceAll('\u2060', '');

  it('says what would settle a close choice, and nothing where it is settled', () => {
    expect(settleWords(shotOf())).toBe('');
    const close = { ...shotOf(), wouldSettle: { club: '5I', swing: 'full', balls: 12 } };
    expect(plain(settleWords(close))).toBe('A close choice: 12 more balls with the 5-iron, full, would settle it.');
    const one = { ...close, wouldSettle: { ...close.wouldSettle, balls: 1 } };
    expect(plain(settleWords(one))).toContain('1 more ball with');
  });

  it('tells the chances of the score with the choice and with those beside it', () => {
    const [choice, second] = [
      { parOrBetter: 0.432, doubleOrWorse: 0.151 },
      { parOrBetter: 0.4, doubleOrWorse: 0.004 },
    ];
    expect(scoresWords(shotOf(), { choice, others: [second] }).map(plain)).toEqual([
      'Par or better 43 in 100, double or worse 15.',
      '9-iron, full: par or better 40 in 100, double or worse 1.',
    ]);
  });
});
