import { describe, expect, it } from 'vitest';
import type { CivilDate } from '../../src/dates/civil.ts';
import { changeLayUp } from '../../src/store/lay-ups.ts';
import { addMember, changeMember } from '../../src/store/people.ts';
import { claim, date, must } from '../support/cars.ts';
import {
  closeOn,
  href,
  layUpIn,
  lettersTo,
  onDayIn,
  PLANNED,
  personIn,
  sweepOn,
  sweptOn,
  tellOn,
  tickOn,
  titleOf,
  winterBarn,
} from '../support/lay-ups.ts';

const ADA = 'ada@example.org';
const BRAM = 'bram@example.org';
const NELL = 'nell@example.org';

const winter = () => {
  const { barn, carId, placeId } = winterBarn();
  const id = layUpIn(barn, carId, { place: placeId });
  const rename = (personId: string, name: string, email: string | null, letters = true) =>
    changeMember(barn.store, barn.acting.collectionId, personId, { name, email, dateOrder: 'ask', letters });
  return { barn, carId, placeId, id, rename };
};

describe('the letter with the plan', () => {
  it('goes once to everybody who gets letters and has an address', () => {
    const { barn, id } = winter();
    personIn(barn, 'Bram', BRAM, true);
    personIn(barn, 'Nell', NELL, false);
    personIn(barn, 'Odd', null, true);
    expect(tellOn(barn, id, PLANNED)).toBe(2);
    expect(tellOn(barn, id, PLANNED)).toBe(0);
    expect(lettersTo(barn).map(({ kind, recipient, state }) => [kind, recipient, state])).toEqual([
      ['plan', ADA, 'waiting'],
      ['plan', BRAM, 'waiting'],
    ]);
    const [letter, other] = lettersTo(barn);
    expect(letter?.text).toMatch(/^Ada, this is the plan for putting away “Merle Tourer” \(The barn\)\./);
    expect(letter?.text).toContain(href(`/lay-ups/${id}`));
    expect(letter).toMatchObject({ day: PLANNED, tries: 0, writtenAt: `${PLANNED}T10:00:00.000Z` });
    expect(letter?.messageId).toMatch(/^<plan\..+@barn\.example\.org>$/);
    expect(other?.messageId).not.toBe(letter?.messageId);
  });

  it('tells of the steps in it: the digest of that day does not', () => {
    const { barn, carId, placeId } = winterBarn();
    const late: CivilDate = '2026-09-18';
    const id = layUpIn(onDayIn(barn, late), carId, { place: placeId });
    tellOn(barn, id, late);
    expect(lettersTo(barn)[0]?.text).toContain(titleOf('settle-place'));
    expect(sweptOn(barn, late)).toEqual({});
    // Those whose day comes later are told on theirs.
    expect(sweptOn(barn, '2026-09-24')[ADA]).toContain(titleOf('order-supplies'));
    expect(lettersTo(barn).at(-1)?.text).not.toContain(titleOf('settle-place'));
  });

  it('names no step that is ticked already', () => {
    const { barn, id } = winter();
    must(tickOn(barn, id, 'photographs', PLANNED));
    tellOn(barn, id, PLANNED);
    expect(lettersTo(barn)[0]?.text).not.toContain(titleOf('photographs'));
    expect(lettersTo(barn)[0]?.text).toContain(titleOf('fault-drive'));
  });

  it('of a stay that is nearly over says nothing of the way back, so its steps are told by the sweep', () => {
    const { barn, carId, placeId } = winterBarn();
    // Ten days away: plan and way back fall on the same day.
    const late: CivilDate = '2026-11-03';
    const id = layUpIn(onDayIn(barn, late), carId, { place: placeId, returnOn: '2026-11-11' });
    tellOn(barn, id, late);
    expect(lettersTo(barn)[0]?.text).not.toContain(titleOf('cover-off', 'wake-up'));
    expect(sweptOn(barn, late)[ADA]).toContain(titleOf('cover-off', 'wake-up'));
  });

  it('that was given up is written again by the next sweep', () => {
    const { barn, id } = winter();
    tellOn(barn, id, PLANNED);
    expect(sweptOn(barn, PLANNED)).toEqual({});
    barn.store.$client.prepare("update letters set state = 'failed'").run();
    expect(sweptOn(barn, PLANNED)[ADA]).toContain('this is the plan for putting away');
    expect(sweptOn(barn, '2026-09-11')).toEqual({});
  });
});

describe('the sweep', () => {
  it('brings the plan to one whose address came later, once, and no step beside it', () => {
    const { barn, id, rename } = winter();
    const nell = personIn(barn, 'Nell', null, true);
    tellOn(barn, id, PLANNED);
    expect(sweepOn(barn, '2026-09-17').withoutAddress).toEqual(['Nell']);
    rename(nell, 'Nell', NELL);
    const written = sweepOn(barn, '2026-09-18').letters;
    expect(written).toEqual([
      {
        to: NELL,
        subject: expect.stringMatching(/^Lay-up of Merle Tourer from 1 November 2026: \d+ steps$/),
        lines: 1,
      },
    ]);
    expect(lettersTo(barn, NELL).map(({ kind }) => kind)).toEqual(['plan']);
    expect(sweptOn(barn, '2026-09-19')).toEqual({});
    expect(Object.keys(sweptOn(barn, '2026-09-24')).toSorted()).toEqual([ADA, NELL]);
  });

  it('brings it to one who joins later', () => {
    const { barn, id } = winter();
    tellOn(barn, id, PLANNED);
    addMember(barn.store, barn.acting.collectionId, { name: 'Bram', email: BRAM, dateOrder: 'ask', letters: true });
    expect(Object.keys(sweptOn(barn, '2026-09-12'))).toEqual([BRAM]);
  });

  it('brings beside the plan what is news of the parts, in a letter of its own', () => {
    const { barn, carId } = winter();
    date(barn, carId, 'spark-plugs', claim('fitted', '2015'));
    const { letters } = sweepOn(barn, PLANNED);
    expect(letters.map(({ to, subject }) => [to, subject])).toEqual([
      [ADA, '1 past: Merle Tourer'],
      [ADA, expect.stringMatching(/^Lay-up of Merle Tourer/)],
    ]);
  });

  it('brings it to nobody without letters, not even to who looks in', () => {
    const { barn, id, rename } = winter();
    const visitor = personIn(barn, 'Bram', BRAM, false);
    changeLayUp(barn.store, barn.acting.collectionId, id, { visitorId: visitor });
    rename(barn.acting.personId, 'Ada', ADA, false);
    expect(sweptOn(barn, PLANNED)).toEqual({});
    rename(visitor, 'Bram', BRAM, true);
    expect(Object.keys(sweptOn(barn, PLANNED))).toEqual([BRAM]);
  });

  it('brings no plan of a stay that was called off or is over', () => {
    const { barn, id } = winter();
    must(closeOn(barn, id, PLANNED, 'called off'));
    expect(sweptOn(barn, '2026-09-12')).toEqual({});
  });

  it('as a dry run writes no plan', () => {
    const { barn } = winter();
    expect(sweepOn(barn, PLANNED, { dryRun: true }).letters).toHaveLength(1);
    expect(lettersTo(barn)).toEqual([]);
    expect(sweptOn(barn, PLANNED)[ADA]).toContain('this is the plan');
  });
});

describe('a plan made as on a day ahead', () => {
  it('is not told before that day, and then not twice', () => {
    const { barn, carId, placeId } = winterBarn();
    const ahead: CivilDate = '2026-10-05';
    const id = layUpIn(onDayIn(barn, ahead), carId, { place: placeId });
    expect(tellOn(barn, id, ahead, '2026-09-10')).toBe(1);
    // Until it is made, there is none.
    expect(sweptOn(barn, '2026-09-30')).toEqual({});
    expect(sweptOn(barn, ahead)[ADA] ?? '').not.toContain('this is the plan');
  });
});
