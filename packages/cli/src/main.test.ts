import { afterEach, describe, expect, test } from 'vitest';
import { main } from './main.ts';

async function run(...args: readonly string[]): Promise<{ code: number; out: string; err: string }> {
  let [out, err] = ['', ''];
  const code = await main(args, { out: (text) => void (out += text), err: (text) => void (err += text) });
  return { code, out, err };
}

describe('help', () => {
  test('--help lists every command with an example, on standard output', async () => {
    const { code, out, err } = await run('--help');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    for (const name of ['carries', 'plan', 'shot', 'fly', 'check', 'serve', 'keep', 'backup', 'erase', 'work'])
      expect(out).toMatch(new RegExp(`^  ${name} +\\S`, 'm'));
    expect(out).toContain('leeway serve');
  });

  test.each(['carries', 'plan', 'shot', 'fly', 'check', 'serve', 'keep', 'backup', 'erase', 'work'])(
    '%s --help gives usage, options and examples',
    async (name) => {
      const { code, out } = await run(name, '--help');
      expect(code).toBe(0);
      expect(out).toMatch(new RegExp(`^leeway ${name}: `));
      expect(out).toContain('--json');
      expect(out).toMatch(/Examples\n {2}leeway /);
      expect(await run('help', name)).toEqual({ code, out, err: '' });
    },
  );

  test('--version tells the version of the package', async () => {
    expect(await run('--version')).toEqual({ code: 0, out: 'leeway 0.1.0\n', err: '' });
  });
});

describe('wrong usage is one line on standard error and exit code 2', () => {
  test.each([
    [
      [],
      'leeway: name a command: carries, plan, shot, fly, chart, ledger, check, serve, keep, players, export, backup, restore, erase, work. See leeway --help\n',
    ],
    [['plna'], 'leeway: no command "plna"; did you mean plan? See leeway --help\n'],
    [
      ['constructor'],
      'leeway: no command "constructor"; there are carries, plan, shot, fly, chart, ledger, check, serve, keep, players, export, backup, restore, erase, work. See leeway --help\n',
    ],
    [['check'], 'leeway check: name a file to check. See leeway check --help\n'],
    [['serve', '--prot', '1'], 'leeway serve: no option --prot; did you mean --port? See leeway serve --help\n'],
    [
      ['serve', '--port', '70000'],
      'leeway serve: --port: found "70000"; expected a whole number from 0 to 65535. See leeway serve --help\n',
    ],
  ])('%j', async (args, err) => {
    expect(await run(...args)).toEqual({ code: 2, out: '', err });
  });

  test('a day that is told without its direction is wrong usage', async () => {
    const { code, out, err } = await run('plan', '--ground', 'g', '--player', 'p', '--wind', '12', '--humidity=40');
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/^leeway plan: --wind: found "12"; expected SPEED@FROM[^\n]+\n$/);
  });
});

describe('a fault of its own', () => {
  afterEach(() => {
    delete process.env['LEEWAY_TRACE'];
  });

  const broken = (...args: readonly string[]) => {
    let err = '';
    const out = (): never => {
      throw new TypeError('x is not a function\n');
    };
    return main(args, { out, err: (text) => void (err += text) }).then((code) => ({ code, err }));
  };

  test('is told in one line without a stack trace, exit code 70', async () => {
    expect(await broken('--version')).toEqual({
      code: 70,
      err: "leeway: a fault of Leeway's own, not of your files: x is not a function (LEEWAY_TRACE=1 shows where; please report it)\n",
    });
  });

  test('shows where when asked', async () => {
    process.env['LEEWAY_TRACE'] = '1';
    expect((await broken('--version')).err).toContain('main.test.ts');
  });
});
