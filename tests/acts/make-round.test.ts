import { describe, expect, it } from 'vitest';
import type { Outcome } from '../../src/acts/fault.ts';
import type { CivilDate } from '../../src/dates/civil.ts';
import type { Round } from '../../src/plans/rounds.ts';
import { withdrawRound } from '../../src/store/lay-ups.ts';
import { carOf, claim, date, must, partOf } from '../support/cars.ts';
import { closeOn, everythingIn, layUpIn, PARKED, roundOn, stayIn, winterBarn } from '../support/lay-ups.ts';
import { typed } from '../support/readings.ts';

const fields = (outcome: Outcome<unknown>): string[] => (outcome.ok ? [] : outcome.faults.map(({ field }) => field));
const GOOD = { smell: 'none', mice: 'none', drips: 'none', wet: 'dry', tires: 'full' };
const CORNERS = ['front left', 'front right', 'rear left', 'rear right'];

const winter = () => {
  const { barn, carId, placeId } = winterBarn();
  const id = layUpIn(barn, carId, { place: placeId });
  const part = (kind: string, position: string | null = null) => partOf(barn, carId, kind, position);
  const rounds = (on: CivilDate): [Round['due'], Round['state']][] =>
    stayIn(barn, id, on).view.rounds.map(({ due, state }) => [due, state]);
  return { barn, carId, id, part, rounds };
};

describe('a round', () => {
  it('is kept with its day, who made it, what was seen and what was read', () => {
    const { barn, id, part } = winter();
    const battery = part('battery-flooded').id;
    const on: CivilDate = '2026-12-02';
    must(
      roundOn(
        barn,
        id,
        on,
        { ...GOOD, clutch: '' },
        {
          day: '2026-12-01',
          note: 'Cold <snap>',
          readings: [typed(battery, 'rest-voltage', '12,6', { day: '2026-12-01' })],
        },
      ),
    );
    const [round] = stayIn(barn, id, on).view.rounds;
    expect(round).toMatchObject({ month: 1, due: '2026-12-01', state: 'done' });
    // What was left open was not looked at.
    expect(round?.made).toMatchObject({ day: '2026-12-01', by: 'Ada', answers: GOOD, note: 'Cold <snap>' });
    expect(part('battery-flooded').readings).toMatchObject([{ gauge: 'rest-voltage', value: 12.6, day: '2026-12-01' }]);
  });

  it.each<[string, Record<string, string>, { day?: string; note?: string }, string[]]>([
    ['a look there is none of', { ...GOOD, moon: 'full' }, {}, ['look.moon']],
    ['an answer there is none of', { ...GOOD, smell: 'roses' }, {}, ['look.smell']],
    ['an answer out of the language itself', { smell: 'toString' }, {}, ['look.smell']],
    ['a day that lies ahead', GOOD, { day: '2026-12-03' }, ['day']],
    ['a day before it stood', GOOD, { day: '2026-10-31' }, ['day']],
    ['a day that is none', GOOD, { day: 'Advent' }, ['day']],
    ['nothing at all', { smell: '' }, {}, ['looks']],
  ])('is refused for %s, and keeps nothing', (_, answers, more, wrong) => {
    const { barn, id } = winter();
    const before = everythingIn(barn);
    expect(fields(roundOn(barn, id, '2026-12-02', answers, more))).toEqual(wrong);
    expect(everythingIn(barn)).toEqual(before);
  });

  it.each([
    ['one look', { smell: 'none' }, {}],
    ['a note', {}, { note: 'Snowed in: looked through the window' }],
  ])('is made by %s alone', (_, answers, more) => {
    const { barn, id, rounds } = winter();
    must(roundOn(barn, id, '2026-12-02', answers, more));
    expect(rounds('2026-12-02')[0]).toEqual(['2026-12-01', 'done']);
  });

  it('with one reading that can’t be keeps neither the others nor the round nor the roll', () => {
    const { barn, id, part } = winter();
    const before = everythingIn(barn);
    const on: CivilDate = '2026-12-02';
    const readings = [
      typed(part('battery-flooded').id, 'rest-voltage', '12.6', { day: on }),
      typed(part('tires-road', 'front left').id, 'cold-pressure', 'firm', { day: on, unit: 'bar' }),
    ];
    expect(fields(roundOn(barn, id, on, { ...GOOD, rolled: 'done' }, { readings }))).toEqual(['cold-pressure typed']);
    expect(everythingIn(barn)).toEqual(before);
  });

  it('that rolled the car says since when its tires stand where they do', () => {
    const { barn, id, part } = winter();
    must(roundOn(barn, id, '2026-12-02', { rolled: 'done' }, { day: '2026-12-01' }));
    for (const corner of CORNERS)
      expect(part('tires-road', corner).claims, corner).toMatchObject([
        { clock: 'used', said: 'date', from: '2026-12-01', to: '2026-12-01' },
      ]);
    expect(part('tire-spare').claims).toEqual([]);
  });

  it('that did not roll it says nothing of the tires', () => {
    const { barn, id, part } = winter();
    must(roundOn(barn, id, '2026-12-02', { rolled: 'not' }));
    for (const corner of CORNERS) expect(part('tires-road', corner).claims).toEqual([]);
  });

  it('a roll goes beside the tires’ own date and leaves their age alone', () => {
    const { barn, carId, id, part } = winter();
    date(barn, carId, 'tires-road', claim('made', '2318', { evidence: 'read on the part' }), 'front left');
    must(roundOn(barn, id, '2026-12-02', { rolled: 'done' }));
    expect(
      part('tires-road', 'front left')
        .claims.map(({ clock }) => clock)
        .toSorted(),
    ).toEqual(['made', 'used']);
    const tire = stayIn(barn, id, '2026-12-02').view.findings.find(
      ({ part: { position } }) => position === 'front left',
    );
    expect(tire?.since?.from).toBe('2018-06-10');
  });
});

describe('the rounds of a stay', () => {
  it('come a month after the parking day; one not made in time stays missed', () => {
    const { barn, id, rounds } = winter();
    must(roundOn(barn, id, '2026-12-03', GOOD));
    expect(rounds('2027-02-02').slice(0, 3)).toEqual([
      ['2026-12-01', 'done'],
      ['2027-01-01', 'missed'],
      ['2027-02-01', 'due'],
    ]);
    must(roundOn(barn, id, '2027-02-02', GOOD));
    expect(rounds('2027-02-02').slice(1)).toEqual([
      ['2027-01-01', 'missed'],
      ['2027-02-01', 'done'],
      ['2027-03-01', 'ahead'],
    ]);
  });

  it('before the parking day there are none', () => {
    const { barn, id, rounds } = winter();
    expect(rounds('2026-10-31')).toEqual([]);
    expect(fields(roundOn(barn, id, '2026-10-31', GOOD))).toEqual(['day']);
  });

  it('a slip is taken back, and its day is due again', () => {
    const { barn, id, rounds } = winter();
    must(roundOn(barn, id, '2026-12-02', { smell: 'fuel' }));
    expect(stayIn(barn, id, '2026-12-02').view.found.map(({ look }) => look.key)).toEqual(['smell']);
    const made = stayIn(barn, id, '2026-12-02').record.rounds[0]?.id ?? '';
    withdrawRound(barn.store, barn.acting.collectionId, id, made, '2026-12-02');
    expect(rounds('2026-12-02')[0]).toEqual(['2026-12-01', 'due']);
    expect(stayIn(barn, id, '2026-12-02').view.found).toEqual([]);
  });

  it('what one found stands until a later one says otherwise', () => {
    const { barn, id } = winter();
    const found = (on: CivilDate) =>
      stayIn(barn, id, on).view.found.map(({ look, answer }) => `${look.key}: ${answer.name}`);
    must(roundOn(barn, id, '2026-12-01', { ...GOOD, mice: 'traces' }));
    expect(found('2026-12-20')).toEqual(['mice: Droppings or a nest']);
    // Not looked at this time, so nothing is known to be better.
    must(roundOn(barn, id, '2027-01-01', { smell: 'none' }));
    expect(found('2027-01-02')).toEqual(['mice: Droppings or a nest']);
    must(roundOn(barn, id, '2027-02-01', GOOD));
    expect(found('2027-02-02')).toEqual([]);
  });

  it('after the stay is over none is made any more', () => {
    const { barn, id } = winter();
    must(closeOn(barn, id, '2027-03-28'));
    const before = everythingIn(barn);
    expect(fields(roundOn(barn, id, '2027-04-10', GOOD))).toEqual(['day']);
    expect(fields(roundOn(barn, id, '2027-04-10', GOOD, { day: '2027-03-01' }))).toEqual(['day']);
    expect(everythingIn(barn)).toEqual(before);
  });

  it('the car’s parts keep what was read, whatever becomes of the round', () => {
    const { barn, carId, id, part } = winter();
    const battery = part('battery-flooded').id;
    must(roundOn(barn, id, PARKED, {}, { readings: [typed(battery, 'rest-voltage', '12.7', { day: PARKED })] }));
    const made = stayIn(barn, id, PARKED).record.rounds[0]?.id ?? '';
    withdrawRound(barn.store, barn.acting.collectionId, id, made, PARKED);
    expect(carOf(barn, carId).parts.flatMap(({ readings }) => readings)).toHaveLength(1);
  });
});
