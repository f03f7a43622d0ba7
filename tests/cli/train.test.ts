import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { reportTrains, tellCount, tellShare } from '../../src/cli/report-trains.ts';
import { columns } from '../../src/cli/wrap-text.ts';
import { runInProcess } from './run-in-process.ts';

const sandgren = ['train', '--ratio', '1:6.931', '--pairs', '2', '--teeth', '12-60'];

describe('train --json is one document of exactly this shape', () => {
  test("Sandgren's problem, proven, nothing on standard error", async () => {
    const { code, out, err } = await runInProcess([...sandgren, '--top', '3', '--json']);
    expect([code, err]).toEqual([0, '']);
    const answer = JSON.parse(out);
    expect(Object.keys(answer)).toEqual(['proven', 'trains', 'visited', 'space']);
    expect([answer.proven, answer.space, answer.trains.length]).toEqual([true, 1225 ** 2, 3]);
    expect(answer.trains[0]).toEqual({
      drivers: [43, 49],
      driven: [16, 19],
      ratio: { num: 304, den: 2107 },
      errorRelative: expect.closeTo(1.1390602752729e-5, 15),
    });
  });

  test.each(['1:6.931', '1/6.931', '1/6,931', '0.144279324772760063482902899', ' 1000 / 6931 '])(
    'the same however the ratio is typed: %j',
    async (ratio) => {
      const words = ['train', '--ratio', ratio, '--pairs', '2', '--teeth', '12-60', '--top', '1', '--json'];
      const { trains } = JSON.parse((await runInProcess(words)).out);
      expect([trains[0].drivers, trains[0].driven]).toEqual([
        [43, 49],
        [16, 19],
      ]);
    },
  );

  test('twenty trains where nothing else is asked', async () => {
    const { out } = await runInProcess([...sandgren, '--json']);
    expect(JSON.parse(out).trains).toHaveLength(20);
  });

  test('with --reverted and --hunting each driver stands at its mate', async () => {
    const words = ['train', '--ratio', '18', '--pairs', '2', '--teeth', '12-120', '--json'];
    for (const { drivers, driven } of JSON.parse((await runInProcess([...words, '--reverted'])).out).trains) {
      expect(drivers[0] + driven[0]).toBe(drivers[1] + driven[1]);
    }
    const { trains } = JSON.parse((await runInProcess([...words, '--hunting', '--idlers'])).out);
    expect(trains).toHaveLength(20);
  });
});

describe('a report for a person', () => {
  test('says the ratio, how far off, what that is in time, and that it is proven', async () => {
    const { code, out, err } = await runInProcess([...sandgren, '--top', '1']);
    expect([code, err]).toEqual([0, '']);
    expect(out).toBe(
      [
        'Two pairs of 12 to 60 teeth, for a ratio of 1:6.931: the output turns 6.931',
        'times while the input turns once.',
        '',
        '  1. 43 and 49 drive 16 and 19: 1 to 6.9309211, slow by 0.0011 %, which is 0.041',
        '     seconds an hour.',
        '',
        '  Proven: of about 1.5 million such trains none is better.',
        '  Any of the drivers may turn any of the driven.',
        '',
      ].join('\n'),
    );
  });

  test('says once that all are exact, and that fewer pairs do as well', async () => {
    const words = ['train', '--ratio', '12.5', '--pairs', '3', '--teeth', '12-60', '--top', '2'];
    const { out } = await runInProcess(words);
    expect(out).toContain('These 2 are all exact:');
    expect(out).toContain('One pair fewer does as well: 12 and 12 drive 40 and 45.');
  });

  test('says which drives which where that matters', async () => {
    const words = ['train', '--ratio', '18', '--pairs', '2', '--teeth', '12-120', '--reverted', '--top', '1'];
    const { out } = await runInProcess(words);
    expect(out).toContain('1. 12 drives 56 and 14 drives 54: 18, exact.');
    expect(out).not.toContain('Any of the drivers');
  });

  test('answers no, exit code 1, where none comes near enough, and tells the nearest', async () => {
    const words = ['train', '--ratio', '2.2', '--pairs', '1', '--teeth', '12,13,30', '--tolerance', '0.1'];
    const { code, out } = await runInProcess(words);
    expect(code).toBe(1);
    expect(out.replace(/\s+/g, ' ')).toContain(
      'None comes within 0.1 %. The nearest: 13 drives 30, slow by 4.9 %, which is 168 seconds an hour.',
    );
    expect(JSON.parse((await runInProcess([...words, '--json'])).out)).toMatchObject({
      proven: true,
      trains: [],
    });
  });

  test('stops when its time is up, with the best so far, and says how to narrow it', async () => {
    const words = ['train', '--ratio', '3.14159265', '--pairs', '8', '--teeth', '12-120', '--seconds', '0.2'];
    const { code, out, err } = await runInProcess([...words, '--json']);
    const { proven, trains, space } = JSON.parse(out);
    expect([code === 0, proven]).toEqual([trains.length > 0, false]);
    expect(space).toBeGreaterThan(1e15);
    const said = err.replace(/\s+/g, ' ');
    expect(said).toContain('not possible in sensible time');
    expect(said).toContain('Fewer pairs, a narrower range');
    expect(said).toContain('was searched: this is the best so far');
  });

  test('keeps to 80 columns', async () => {
    const words = ['train', '--ratio', '3.14159', '--pairs', '3', '--teeth', '12-60', '--hunting'];
    const { out } = await runInProcess(words);
    for (const line of out.split('\n')) expect(line.length, line).toBeLessThanOrEqual(columns);
    expect(out).not.toMatch(/NaN|undefined|\[object/);
  });

  test('an answer that is not proven is called the best so far', () => {
    const train = { drivers: [12], driven: [25], ratio: { num: 25, den: 12 }, errorRelative: 0.01 };
    const answer = { proven: false, trains: [train], visited: 9, space: 2e20, searched: 0.999 };
    const text = reportTrains(answer, { ratio: 2, pairs: 1, teeth: '12-40' }, {}).join('\n');
    expect(text).toContain('Best so far: 99 %');
    expect(text).not.toContain('Proven');
  });

  test.each([
    [437_635, '437,635'],
    [1_500_625, 'about 1.5 million'],
    [38_574_285_072_400, 'about 39 trillion'],
    [1.97e16, 'about 20 thousand trillion'],
    [2.8e24, 'about 10 to the power 24'],
  ])('%d trains are %j', (count, words) => {
    expect(tellCount(count)).toBe(words);
  });

  test('a share is never rounded to nothing or to all', () => {
    expect([0, 0.0004, 0.05, 0.9999].map(tellShare)).toEqual([
      'less than 0.1 %',
      'less than 0.1 %',
      '5.0 %',
      '99 %',
    ]);
  });
});

describe('bad input is exit code 2, names the field, keeps what was typed, and says what to do', () => {
  const good = { ratio: '12.5', pairs: '2', teeth: '12-60', top: '5', tolerance: '1', seconds: '5' };
  test.each([
    ['ratio', '0'],
    ['ratio', '-12.5'],
    ['ratio', 'fast'],
    ['ratio', '1:0'],
    ['ratio', '1,234.5'],
    ['pairs', '0'],
    ['pairs', '9'],
    ['pairs', '2.5'],
    ['pairs', 'two'],
    ['teeth', '60-12'],
    ['teeth', '0-12'],
    ['teeth', 'some'],
    ['teeth', '12-99999'],
    ['top', '0'],
    ['top', '1001'],
    ['tolerance', '100'],
    ['tolerance', 'tight'],
    ['seconds', '0'],
    ['seconds', 'long'],
  ])('%s %s', async (field, typed) => {
    const words = Object.entries({ ...good, [field]: typed }).flatMap(([key, value]) => [`--${key}`, value]);
    const ran = await runInProcess(['train', ...words, '--json']);
    expect(ran.code).toBe(2);
    const { error } = JSON.parse(ran.out);
    expect([error.field, error.details.typed]).toEqual([field, typed]);
    expect(error.remedy).not.toBe('');
    expect(ran.err).toContain(`${field}: `);
  });

  test.each(['--ratio', '--pairs', '--teeth'])('without %s', async (left) => {
    const words = ['--ratio', '2', '--pairs', '1', '--teeth', '12-20'];
    const at = words.indexOf(left);
    const ran = await runInProcess(['train', ...words.slice(0, at), ...words.slice(at + 2)]);
    expect([ran.code, ran.out]).toEqual([2, '']);
    expect(ran.err).toContain(left);
  });
});

test('the README shows the answer to its example', async () => {
  const readme = readFileSync('README.md', 'utf8').replace(/\s+/g, ' ');
  const { trains, ...rest } = JSON.parse((await runInProcess([...sandgren, '--json'])).out);
  const [{ drivers, driven, ratio }] = trains;
  const asWritten = (value: unknown): string =>
    JSON.stringify(value)
      .replace(/([:,{])/g, '$1 ')
      .replace(/}/g, ' }');
  expect(readme).toContain(`"drivers": ${asWritten(drivers)}, "driven": ${asWritten(driven)}`);
  expect(readme).toContain(`"ratio": ${asWritten(ratio)}`);
  expect(readme).toContain(`"visited": ${rest.visited}, "space": ${rest.space}`);
});
