import { describe, expect, it } from 'vitest';
import { barnOf, carIn, carOf } from '../support/cars.ts';
import { faultAt, field, text } from '../support/html.ts';
import { openSite } from '../support/site.ts';

const siteWithCar = () => {
  const site = openSite();
  const barn = barnOf(site);
  const carId = carIn(barn, { km: 87_400 });
  const record = (form: Record<string, string>, query = '') => site.post(`/cars/${carId}/odometer${query}`, form);
  return { site, carId, record, readings: () => carOf(barn, carId).facts.odometer };
};

describe('an odometer reading', () => {
  it.each([
    ['90 000 km', 90_000],
    ['90,000 km', 90_000],
    ['90000km', 90_000],
    ['60.000 mi', 96_561],
    ['60,000 miles', 96_561],
  ])('may be written “%s”', async (distance, km) => {
    const { carId, record, readings } = siteWithCar();
    const answer = await record({ distance, day: '' });
    expect([answer.status, answer.headers.get('location')]).toEqual([303, `/cars/${carId}#odometer`]);
    expect(readings()).toEqual([{ day: '2026-11-25', km }]);
  });

  it.each(['', 'far', '-5', '1,23', '9999999999 km'])('may not be “%s”; what was typed stays', async (distance) => {
    const { record, readings } = siteWithCar();
    const answer = await record({ distance, day: '2026-11-01' });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(faultAt(html, 'distance')).toContain(`“${distance}” is no distance`);
    const number = distance.replace(' km', '');
    expect([field(html, 'distance')['value'], field(html, 'day')['value']]).toEqual([number, '2026-11-01']);
    expect(readings()).toHaveLength(1);
  });

  it('without a unit is asked back, and the one ticked beside it is taken', async () => {
    const { record, readings } = siteWithCar();
    const asked = await record({ distance: '60,000', day: '' });
    expect(asked.status).toBe(422);
    expect(faultAt(await asked.text(), 'distance')).toContain('Is “60,000” in km or in miles?');
    expect((await record({ distance: '60,000', unit: 'mi', day: '' })).status).toBe(303);
    expect(readings()).toEqual([{ day: '2026-11-25', km: 96_561 }]);
  });

  it('is of the day given', async () => {
    const { record, readings } = siteWithCar();
    await record({ distance: '80 000 km', day: '2020-05-01' });
    expect(readings()).toEqual([
      { day: '2020-05-01', km: 80_000 },
      { day: '2026-11-25', km: 87_400 },
    ]);
  });

  it('as on another day is of that day', async () => {
    const { carId, record, readings } = siteWithCar();
    const answer = await record({ distance: '88 000 km', day: '' }, '?on=2027-04-01');
    expect(answer.headers.get('location')).toBe(`/cars/${carId}?on=2027-04-01#odometer`);
    expect(readings().at(-1)).toEqual({ day: '2027-04-01', km: 88_000 });
  });

  it('that goes down is refused, against earlier readings and later ones', async () => {
    const { record, readings } = siteWithCar();
    await record({ distance: '80 000 km', day: '2020-05-01' });
    for (const [distance, day] of [
      ['79 999 km', '2021-01-01'],
      ['87 401 km', '2026-11-24'],
      ['80 001 km', '2020-04-30'],
    ] as const) {
      const answer = await record({ distance, day });
      expect(answer.status, day).toBe(422);
      expect(faultAt(await answer.text(), 'distance'), day).toMatch(
        /it was 8[07],[04]00 km on .*: an odometer only goes up/,
      );
    }
    expect(readings()).toHaveLength(2);
  });

  it('of the same day takes the place of the first, lower or higher', async () => {
    const { record, readings } = siteWithCar();
    expect((await record({ distance: '87 000 km', day: '' })).status).toBe(303);
    expect(readings()).toEqual([{ day: '2026-11-25', km: 87_000 }]);
  });

  it.each([
    ['2026-11-26', 'That day lies ahead.'],
    ['yesterday', '“yesterday” is no day.'],
    ['2026-02-30', '“2026-02-30” is no day.'],
  ])('of %s is refused', async (day, why) => {
    const { record, readings } = siteWithCar();
    const answer = await record({ distance: '88 000 km', day });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(faultAt(html, 'day')).toBe(why);
    expect(text(html)).toContain('Merle Tourer');
    expect(readings()).toHaveLength(1);
  });
});
