import { describe, expect, test } from 'vitest';
import { type CompensationFile, findCompensation, type Job, makers, type Wheel } from '../../src/index.ts';
import { listCouponActs, putCouponReading, readCouponAct } from '../../src/page/machine/coupon-acts.ts';
import { tellFigures } from '../../src/page/machine/tell-machine.ts';
import { asMadeWheel, editMade } from '../../src/page/made/edit-made.ts';
import { changeMaking, readMakingWish, switchChange } from '../../src/page/maker/making-wish.ts';
import { tellOnPage } from '../../src/page/maker/tell-made-by.ts';
import { editWheel, putReading } from '../../src/page/state/edit-job.ts';

const wheel: Wheel = {
  id: 'w',
  readings: [{ of: 'teeth', count: 23 }],
  making: { process: 'resin', off: ['hub'] },
};

describe('who makes it', () => {
  test('a job that names a process alone means whoever has it', () => {
    expect(readMakingWish(wheel, []).maker?.key).toBe('my-resin');
    expect(readMakingWish({ id: 'w' }, []).maker).toBeUndefined();
  });

  test('a process or material that the maker has not gives way to their own', () => {
    const wish = readMakingWish(
      { id: 'w', making: { maker: 'machine-shop', process: 'resin', material: 'pla' } },
      [],
    );
    expect(wish.process?.key).toBe('machine-shop');
    expect(wish.material).toBeUndefined();
  });

  test('every maker but the one who sells has a process', () => {
    const without = makers.filter(
      ({ key }) => !readMakingWish({ id: 'w', making: { maker: key } }, []).process,
    );
    expect(without.map(({ key }) => key)).toEqual(['buy-one']);
  });

  test('a machine that is not known here is said to be missing, and is not used', () => {
    const named = changeMaking(wheel, { machine: 'the old one' });
    expect(readMakingWish(named, [])).toMatchObject({ machine: undefined, isMachineMissing: true });
    const file: CompensationFile = { format: 'sparetooth-compensation', version: 1, process: 'resin' };
    const kept = { name: 'the old one', file, past: [] };
    expect(readMakingWish(named, [kept])).toMatchObject({ machine: kept, isMachineMissing: false });
    // Of another process it takes back another machine's errors.
    const other = { ...kept, file: { ...file, process: 'filament-0.4' } };
    expect(readMakingWish(named, [other]).machine).toBeUndefined();
  });

  test('a change that is left out and made again leaves the gear as it was', () => {
    const off = switchChange(wheel, 'bore', false);
    expect(off.making?.off).toEqual(['hub', 'bore']);
    expect(switchChange(off, 'bore', true)).toEqual(wheel);
    expect(switchChange({ id: 'w', making: { off: ['hub'] } }, 'hub', true)).toEqual({ id: 'w' });
  });

  test('no remedy names an option of the command line', () => {
    expect(
      tellOnPage(
        'The nearest way out: a resin printer (--process resin). To try it all the same, switch "fineness" off.',
      ),
    ).toBe('The nearest way out: a resin printer.');
  });
});

describe('the made part', () => {
  const job: Job = {
    format: 'sparetooth-job',
    version: 1,
    wheels: [{ ...wheel, made: { spec: { teeth: 23, moduleMm: 0.5 }, readings: [] } }, { id: 'mate' }],
  };

  test('a reading taken of it goes to it alone, the old gear and its mates keep theirs', () => {
    const edited = editMade(job, 'w', (one) =>
      editWheel(one, 'w', (part) => putReading(part, { of: 'outside', mm: 12.4 })),
    );
    expect(edited.wheels?.[0].made?.readings).toEqual([{ of: 'outside', mm: 12.4 }]);
    expect(edited.wheels?.[0].readings).toEqual(wheel.readings);
    expect(edited.wheels?.[1]).toBe(job.wheels?.[1]);
  });

  test('it is whole, and its count is known without counting', () => {
    const [first] = job.wheels ?? [];
    expect(asMadeWheel({ ...first, state: 'damaged', damage: [{ kind: 'split' }] })).toMatchObject({
      state: 'sound',
      readings: [{ of: 'teeth', count: 23 }],
    });
    expect(asMadeWheel(first).damage).toBeUndefined();
  });
});

describe('the coupon', () => {
  test('every act gives a reading that the calibration takes', () => {
    let file: CompensationFile = { format: 'sparetooth-compensation', version: 1, process: 'filament-0.4' };
    const acts = listCouponActs('filament-0.4');
    for (const act of acts) {
      const lengths =
        act.of === 'gap'
          ? [11, 2]
          : act.of === 'bore'
            ? [(act.nominalMm ?? 0) - 0.2, act.nominalMm ?? 0]
            : [(act.nominalMm ?? 0) + 0.1];
      const read = readCouponAct(act, lengths);
      if ('wrong' in read) throw new Error(read.wrong);
      file = putCouponReading(file, 0, read.reading);
    }
    const found = findCompensation(file);
    expect(found.from).toBe('coupons');
    expect(found.calibration.readings).toHaveLength(acts.length);
    // Widths 0.1 mm over their size are 0.05 a side, weighed against what is usual for the process.
    expect(found.figures.outsidePerSideMm).toBeGreaterThan(0.02);
    expect(found.figures.outsidePerSideMm).toBeLessThan(0.08);
  });

  test('a reading taken again takes the place of the first', () => {
    const file: CompensationFile = { format: 'sparetooth-compensation', version: 1, process: 'resin' };
    const one = putCouponReading(file, 1, { of: 'bore', nominalMm: 3, mm: 2.9 });
    const two = putCouponReading(one, 1, { of: 'bore', nominalMm: 3, mm: 2.8 });
    expect(two.coupons).toEqual([{ readings: [] }, { readings: [{ of: 'bore', nominalMm: 3, mm: 2.8 }] }]);
  });

  test('only layered processes have a foot', () => {
    expect(listCouponActs('laser-cut').some(({ of }) => of === 'foot')).toBe(false);
    expect(listCouponActs('resin').filter(({ of }) => of === 'foot')).toHaveLength(3);
  });

  test('a shank that stops has to be the thicker one, one in the notch has to rest on both flanks', () => {
    expect(readCouponAct({ of: 'bore', nominalMm: 3 }, [3, 2.9])).toHaveProperty('wrong');
    expect(readCouponAct({ of: 'gap' }, [11, 5])).toHaveProperty('wrong');
    expect(readCouponAct({ of: 'gap' }, [11])).toHaveProperty('wrong');
  });

  test('what a machine adds is always labelled a side and on a diameter', () => {
    const lines = tellFigures(
      {
        scalePercent: 0,
        outsidePerSideMm: 0.05,
        teethPerSideMm: -0.02,
        holesPerSideMm: 0.03,
        firstLayerPerSideMm: 0,
      },
      undefined,
    );
    expect(lines).toEqual([
      'Outsides: 0.05 mm larger a side (0.10 on a diameter).',
      'Teeth: 0.02 mm thinner a side (0.04 on a diameter).',
      'Holes: 0.03 mm smaller a side (0.06 on a diameter).',
    ]);
  });
});
