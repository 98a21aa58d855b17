import { expect, test } from 'vitest';
import { csvOf } from './csv.ts';

test.each([
  ['=1+1', "'=1+1"],
  ['+44 20', "'+44 20"],
  ['-2+cmd', "'-2+cmd"],
  ['@SUM(A1)', "'@SUM(A1)"],
  ['\t=1', `'\t=1`],
  ['\r@x', `"'\r@x"`],
  ['=HYPERLINK("a","b")', `"'=HYPERLINK(""a"",""b"")"`],
  ['-2.5', '-2.5'],
  [-2.5, '-2.5'],
  [1e-7, '1e-7'],
  ['7-iron', '7-iron'],
  ['half, soft', '"half, soft"'],
])('a cell %j is written %j', (cell, written) => {
  expect(csvOf(['a'], [[cell]])).toBe(`a\r\n${written}\r\n`);
});
