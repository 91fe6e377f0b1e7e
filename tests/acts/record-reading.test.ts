import { describe, expect, it } from 'vitest';
import { setDetailsAct } from '../../src/acts/details.ts';
import { renewPart } from '../../src/acts/parts.ts';
import type { ReadingGiven } from '../../src/acts/record-reading.ts';
import { addDays } from '../../src/dates/civil.ts';
import { findPart, retirePart } from '../../src/store/cars.ts';
import { type Barn, carIn, carOf, claim, date, must, openBarn, partOf, TODAY, traitsOf } from '../support/cars.ts';
import { record, typed } from '../support/readings.ts';

const barnWithCar = (): { barn: Barn; carId: string } => {
  const barn = openBarn();
  return { barn, carId: carIn(barn) };
};

const KINDS = {
  volts: ['battery-flooded', 'rest-voltage', null],
  density: ['battery-flooded', 'density', null],
  pressure: ['tires-road', 'cold-pressure', 'front left'],
  freezing: ['coolant-iat', 'freeze-point', null],
} as const;

/** One reading of a gauge of the car, as typed. */
const one = (
  { barn, carId }: { barn: Barn; carId: string },
  gauge: keyof typeof KINDS,
  text: string,
  more: Partial<ReadingGiven> = {},
): ReadingGiven => {
  const [kind, key, position] = KINDS[gauge];
  return typed(partOf(barn, carId, kind, position).id, key, text, more);
};

const readingsOf = ({ barn, carId }: { barn: Barn; carId: string }) =>
  carOf(barn, carId).parts.flatMap(({ readings }) => readings);

describe('recording a reading', () => {
  it('keeps the number in the gauge’s unit, what was typed, who, when, how warm and with what', () => {
    const here = barnWithCar();
    const given = one(here, 'pressure', ' 32 psi ', {
      day: '2026-11-20',
      warmth: '50',
      warmthUnit: '°F',
      instrument: 'Dial gauge',
      note: 'In the shade',
    });
    expect(must(record(here.barn, here.carId, [given]))).toBe(1);
    const [kept] = readingsOf(here);
    expect(kept).toMatchObject({
      partId: given.partId,
      gauge: 'cold-pressure',
      day: '2026-11-20',
      typed: '32 psi',
      unit: 'psi',
      instrument: 'Dial gauge',
      note: 'In the shade',
      recordedOn: TODAY,
      recordedBy: here.barn.acting.personId,
      withdrawnOn: null,
    });
    expect(kept?.value).toBeCloseTo(2.2063, 4);
    expect(kept?.warmth).toBeCloseTo(10, 9);
  });

  it.each<[keyof typeof KINDS, string, string, number]>([
    ['volts', '12,45', '', 12.45],
    ['pressure', '2.2', '', 2.2],
    ['pressure', '220', 'kPa', 2.2],
    ['pressure', '30', 'psi', 2.0684],
    ['freezing', '−24', '', -24],
    ['freezing', '-13', '°F', -25],
    ['freezing', '14 °F', '°C', -10],
    // No unit at all is that of the gauge.
    ['volts', '12.4', '', 12.4],
  ])('%s: %j in %j is %d', (gauge, text, unit, value) => {
    const here = barnWithCar();
    must(record(here.barn, here.carId, [one(here, gauge, text, { unit })]));
    expect(readingsOf(here)[0]?.value).toBeCloseTo(value, 4);
  });

  it('in its gauge’s own unit keeps the digits the gauge has, and those typed beside it', () => {
    const here = barnWithCar();
    must(record(here.barn, here.carId, [one(here, 'volts', '12.598'), one(here, 'pressure', '31.9 psi')]));
    const kept = new Map(readingsOf(here).map((reading) => [reading.gauge, reading]));
    expect(kept.get('rest-voltage')).toMatchObject({ value: 12.6, typed: '12.598', unit: 'V' });
    // 31.9 psi: rounded to the gauge’s 2.20 bar it would read back as another number.
    expect(kept.get('cold-pressure')?.value).toBeCloseTo(2.199428, 6);
  });

  it('of the day itself, and of the first day the part can be there, is taken', () => {
    const here = barnWithCar();
    date(here.barn, here.carId, 'battery-flooded', claim('made', 'June 2026'));
    const days = ['2026-06-01', TODAY] as const;
    must(
      record(
        here.barn,
        here.carId,
        days.map((day) => one(here, 'volts', '12.6', { day })),
      ),
    );
    expect(readingsOf(here).map(({ day }) => day)).toEqual(days);
  });
});

describe('a reading is refused', () => {
  const refusal = (here: { barn: Barn; carId: string }, ...given: ReadingGiven[]) => {
    const outcome = record(here.barn, here.carId, given);
    expect(readingsOf(here)).toEqual([]);
    return outcome.ok ? [] : outcome.faults;
  };
  const because = (...given: [keyof typeof KINDS, string, Partial<ReadingGiven>?]) => {
    const here = barnWithCar();
    return refusal(here, one(here, ...given));
  };

  it.each<[keyof typeof KINDS, string, string, string]>([
    ['pressure', '11', '', '11 bar can’t be: this reads from 0 bar to 10 bar.'],
    ['pressure', '200', 'psi', '200 psi can’t be: this reads from 0 psi to 145 psi.'],
    ['pressure', '-1', '', '−1 bar can’t be: this reads from 0 bar to 10 bar.'],
    ['freezing', '50', '°F', '50 °F can’t be: this reads from −103 °F to 41 °F.'],
    ['volts', '126', '', '126 V can’t be: this reads from 0 V to 16 V.'],
  ])('that no instrument shows: %s %s %s, also where it is sure', (gauge, text, unit, message) => {
    for (const sure of [false, true])
      expect(because(gauge, text, { unit, sure })).toEqual([
        { field: `${KINDS[gauge][1]} typed`, message: `${message} Check the number and its unit.` },
      ]);
  });

  it('where no number or no such unit was typed', () => {
    expect(because('volts', 'full')).toMatchObject([{ message: expect.stringContaining('is no number') as string }]);
    expect(because('volts', '12 psi')).toMatchObject([{ message: expect.stringContaining('not a unit') as string }]);
    for (const unit of ['psi', 'furlong', 'toString'])
      expect(because('volts', '12.4', { unit })).toEqual([
        { field: 'rest-voltage typed', message: `“${unit}” is not a unit for this: use V.` },
      ]);
  });

  it('where a comma can mean two numbers, also in a unit picked beside it', () => {
    expect(because('volts', '1,260')).toMatchObject([{ message: expect.stringContaining('two numbers') as string }]);
    expect(because('pressure', '2,200', { unit: 'kPa', sure: true })).toMatchObject([
      { field: 'cold-pressure typed', message: expect.stringContaining('two numbers') as string },
    ]);
    const here = barnWithCar();
    must(record(here.barn, here.carId, [one(here, 'density', '1,265', { warmth: '20' })]));
    expect(readingsOf(here)).toMatchObject([{ value: 1.265 }]);
  });

  it('of a day ahead, or of none', () => {
    expect(because('volts', '12.6', { day: addDays(TODAY, 1) })).toEqual([
      { field: 'rest-voltage day', message: 'That day lies ahead.' },
    ]);
    for (const day of ['2026-02-30', 'today', ''])
      expect(because('volts', '12.6', { day })).toMatchObject([{ field: 'rest-voltage day' }]);
  });

  it('of a day before the fluid was filled', () => {
    const here = barnWithCar();
    date(here.barn, here.carId, 'brake-fluid-glycol', claim('filled', '1 June 2026'));
    const part = partOf(here.barn, here.carId, 'brake-fluid-glycol').id;
    const water = (day: ReadingGiven['day']) => typed(part, 'water', '1.5', { day });
    expect(refusal(here, water('2026-05-31'))).toMatchObject([
      { field: 'water day', message: expect.stringContaining('there since 1 June 2026 at the earliest') as string },
    ]);
    must(record(here.barn, here.carId, [water('2026-06-01')]));
  });

  it('of a day before the part was made', () => {
    const here = barnWithCar();
    date(here.barn, here.carId, 'battery-flooded', claim('made', 'June 2026'));
    expect(refusal(here, one(here, 'volts', '12.6', { day: '2026-05-31' }))).toMatchObject([
      { field: 'rest-voltage day' },
    ]);
  });

  it('of a day before the part was fitted, though it was made by then', () => {
    const here = barnWithCar();
    date(here.barn, here.carId, 'battery-flooded', claim('made', 'June 2024'));
    date(here.barn, here.carId, 'battery-flooded', claim('fitted', '1 June 2026'));
    expect(refusal(here, one(here, 'volts', '12.6', { day: '2026-05-31' }))).toMatchObject([
      { field: 'rest-voltage day' },
    ]);
  });

  it('where the temperature is none of a tire', () => {
    expect(because('pressure', '2.2', { warmth: 'warm' })).toMatchObject([{ field: 'cold-pressure warmth' }]);
    expect(because('pressure', '2.2', { warmth: '200' })).toMatchObject([
      { field: 'cold-pressure warmth', message: 'A temperature from −50 °C to 120 °C is meant here.' },
    ]);
  });

  it('for a gauge the part does not have, or a part of another car', () => {
    const here = barnWithCar();
    const battery = partOf(here.barn, here.carId, 'battery-flooded').id;
    expect(refusal(here, typed(battery, 'tread', '5'))).toMatchObject([{ field: 'tread gauge' }]);
    const other = carIn(here.barn, { name: 'Alder Coupe' });
    const theirs = partOf(here.barn, other, 'battery-flooded').id;
    expect(refusal(here, typed(theirs, 'rest-voltage', '12.6'))).toMatchObject([
      { message: 'That part is not on this car any more.' },
    ]);
  });

  it('for a part that was closed: renewed, or off the car', () => {
    const here = barnWithCar();
    const { barn, carId } = here;
    const renewed = partOf(barn, carId, 'battery-flooded');
    must(
      renewPart(
        barn.store,
        barn.acting,
        { part: renewed, car: carOf(barn, carId).facts },
        { why: '', note: '', claims: [] },
      ),
    );
    const retired = partOf(barn, carId, 'tires-road', 'front left').id;
    retirePart(barn.store, barn.acting.collectionId, retired, TODAY, 'None.');
    for (const given of [typed(renewed.id, 'rest-voltage', '12.6'), typed(retired, 'tread', '5')]) {
      expect(refusal(here, given)).toMatchObject([{ message: 'That part is not on this car any more.' }]);
      expect(findPart(barn.store, barn.acting.collectionId, given.partId)?.readings).toEqual([]);
    }
  });

  it('where nothing was typed', () => {
    const { barn, carId } = barnWithCar();
    expect(record(barn, carId, [])).toMatchObject({ ok: false, faults: [{ field: 'readings' }] });
  });

  it('with all faults of its fields at once', () => {
    const faults = because('pressure', 'flat', { warmth: 'warm', day: 'soon' });
    expect(faults.map(({ field }) => field).toSorted()).toEqual([
      'cold-pressure day',
      'cold-pressure typed',
      'cold-pressure warmth',
    ]);
  });
});

describe('a reading seldom seen', () => {
  it('is asked back in the unit typed, and taken with the word that it is so', () => {
    const here = barnWithCar();
    const low = one(here, 'pressure', '5', { unit: 'psi' });
    const asked = record(here.barn, here.carId, [low]);
    expect(asked).toEqual({
      ok: false,
      faults: [
        {
          field: 'cold-pressure typed',
          message: '5 psi is seldom seen: most read from 11.6 psi to 65.3 psi. Is it what the instrument showed?',
          choices: [{ value: 'sure', label: 'Yes, 5 psi' }],
        },
      ],
    });
    expect(readingsOf(here)).toEqual([]);
    must(record(here.barn, here.carId, [{ ...low, sure: true }]));
    expect(readingsOf(here)).toHaveLength(1);
  });

  it('goes by what the part is: six volts are usual where three cells are', () => {
    const here = barnWithCar();
    const six = one(here, 'volts', '6.2');
    expect(record(here.barn, here.carId, [six])).toMatchObject({ faults: [{ choices: [{ value: 'sure' }] }] });
    const { store, acting } = here.barn;
    must(
      setDetailsAct(store, acting, partOf(here.barn, here.carId, 'battery-flooded'), {
        volts: { typed: '6', unit: '' },
      }),
    );
    must(record(here.barn, here.carId, [six]));
    expect(record(here.barn, here.carId, [one(here, 'volts', '12.6')])).toMatchObject({
      faults: [{ choices: [{ value: 'sure' }] }],
    });
  });
});

describe('several readings', () => {
  it('are recorded together, in the order of their days', () => {
    const here = barnWithCar();
    const given = [
      one(here, 'volts', '12.5', { day: '2026-11-20' }),
      one(here, 'volts', '12.7', { day: '2026-11-10' }),
      one(here, 'pressure', '2.2'),
    ];
    expect(must(record(here.barn, here.carId, given))).toBe(3);
    expect(partOf(here.barn, here.carId, 'battery-flooded').readings.map(({ value }) => value)).toEqual([12.7, 12.5]);
  });

  it('are recorded all or none, and every fault names its field', () => {
    const here = barnWithCar();
    const given = [
      one(here, 'volts', '12.6'),
      one(here, 'pressure', '99'),
      one(here, 'density', '1.27', { warmth: 'cool' }),
    ];
    expect(record(here.barn, here.carId, given)).toMatchObject({
      ok: false,
      faults: [{ field: 'cold-pressure typed' }, { field: 'density warmth' }],
    });
    expect(readingsOf(here)).toEqual([]);
  });

  it('of which the store can’t take one leave none', () => {
    const here = barnWithCar();
    const { store } = here.barn;
    store.$client.exec(
      "create trigger full before insert on readings when new.gauge = 'density' begin select raise(abort, 'no room'); end",
    );
    expect(() => record(here.barn, here.carId, [one(here, 'volts', '12.6'), one(here, 'density', '1.27')])).toThrow(
      'no room',
    );
    expect(readingsOf(here)).toEqual([]);
  });
});

describe('a round before the last use', () => {
  it('is no reading of another part: the car was used since, not renewed', () => {
    const barn = openBarn();
    const carId = carIn(barn, { traits: traitsOf('coupe-injection-abs') });
    date(barn, carId, 'ac-system', claim('used', '1 November 2026'));
    const part = partOf(barn, carId, 'ac-system').id;
    expect(record(barn, carId, [typed(part, 'vent', '6', { day: '2026-07-01' })])).toMatchObject({ ok: true });
  });
});
