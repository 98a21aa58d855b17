import { expect, test } from 'vitest';
import { parseArguments } from './arguments.ts';
import { Usage } from './command.ts';

const OPTIONS = {
  from: { kind: 'text', help: '', value: 'LON,LAT' },
  ground: { kind: 'text', help: '', value: 'FILE' },
  note: { kind: 'text', help: '', many: true },
  json: { kind: 'flag', help: '' },
} as const;

const usageOf = (...args: readonly string[]): string => {
  try {
    parseArguments(args, OPTIONS);
  } catch (error) {
    if (error instanceof Usage) return error.message;
    throw error;
  }
  return 'accepted';
};

test('a value may stand after a space or an equals sign, and begin with a minus sign', () => {
  expect(parseArguments(['--from', '-3.1,54.2'], OPTIONS).text('from')).toBe('-3.1,54.2');
  expect(parseArguments(['--from=-3.1,54.2'], OPTIONS).text('from')).toBe('-3.1,54.2');
  expect(parseArguments(['--ground=a=b.osm'], OPTIONS).text('ground')).toBe('a=b.osm');
});

test('words, flags and repeated options are told apart, and -- ends the options', () => {
  const given = parseArguments(['a.csv', '--json', '--note', 'x', '-12', '--note=y', '--', '--json.csv'], OPTIONS);
  expect(given.words).toEqual(['a.csv', '-12', '--json.csv']);
  expect(given.flag('json')).toBe(true);
  expect(given.texts('note')).toEqual(['x', 'y']);
  expect(given.text('ground')).toBeUndefined();
});

test('wrong usage is told in one line that names the option', () => {
  expect(usageOf('--grund', 'x')).toBe('no option --grund; did you mean --ground?');
  expect(usageOf('--constructor', 'x')).toBe('no option --constructor');
  expect(usageOf('-j')).toBe('no option -j; options are written --name');
  expect(usageOf('--ground')).toBe('--ground needs a value: --ground FILE');
  expect(usageOf('--ground=')).toBe('--ground needs a value: --ground FILE');
  expect(usageOf('--ground', '--json')).toBe('--ground needs a value: --ground FILE');
  expect(usageOf('--json=yes')).toBe('--json takes no value, found "yes"');
  expect(usageOf('--ground', 'a', '--ground', 'b')).toBe('--ground is given twice');
});
