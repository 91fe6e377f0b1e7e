import { describe, expect, it } from 'vitest';
import type { CivilDate } from '../../src/dates/civil.ts';
import type { Stage } from '../../src/notices/owed.ts';
import {
  claimLetter,
  failedLetters,
  findLetter,
  type LetterRow,
  lastFinishedSweep,
  lettersOf,
  queueLetters,
  type Swept,
  saidTo,
  settleLetter,
  sweptAt,
  waitingLetters,
} from '../../src/store/letters.ts';
import { type Barn, carIn, openBarn, partOf, TODAY } from '../support/cars.ts';
import { newLetter } from '../support/letters.ts';

const NOW = '2026-11-25T07:00:00.000Z';
const at = (minutes: number): string => new Date(Date.parse(NOW) + minutes * 60_000).toISOString();

const swept = (collectionId: string, day: CivilDate, ahead = false): Swept => ({
  collectionId,
  day,
  ahead,
  finishedAt: NOW,
});

const queue = (barn: Barn, id: string, said: { partId: string; stage: Stage }[] = []): void => {
  const { collectionId } = barn.acting;
  const lines = said.map((line) => ({ ...line, saidOn: TODAY }));
  queueLetters(barn.store, swept(collectionId, TODAY), [
    { letter: newLetter(barn.acting, id, NOW), said: lines, told: [] },
  ]);
};

const taken = (letter: LetterRow | undefined): LetterRow => {
  if (!letter) throw new Error('No letter was due');
  return letter;
};

const settle = (barn: Barn, letter: LetterRow, state: 'sent' | 'waiting' | 'failed', nextTryAt = NOW): void =>
  settleLetter(barn.store, letter, { at: at(1), ok: state === 'sent', answer: '250 OK', state, nextTryAt });

/** Claims what is due at an instant. */
const take = (barn: Barn, now: string, leaseUntil: string) =>
  claimLetter(barn.store, { now, dueBy: now, leaseUntil, except: [] });

describe('the outbox', () => {
  it('hands out a waiting letter once: a second claim gets nothing', () => {
    const barn = openBarn();
    queue(barn, 'a');
    expect(take(barn, NOW, at(10))).toMatchObject({
      id: 'a',
      state: 'sending',
      tries: 1,
      leaseUntil: at(10),
    });
    expect(take(barn, NOW, at(10))).toBeUndefined();
    expect(take(barn, at(9), at(19))).toBeUndefined();
  });

  it('hands a letter out again, with the same message id, once the lease of a sender that died ran out', () => {
    const barn = openBarn();
    queue(barn, 'a');
    const first = taken(take(barn, NOW, at(10)));
    const second = taken(take(barn, at(10), at(20)));
    expect(second).toMatchObject({ id: 'a', tries: 2, leaseUntil: at(20), messageId: first.messageId });
  });

  it('hands out nothing before the next try is due', () => {
    const barn = openBarn();
    queue(barn, 'a');
    settle(barn, taken(take(barn, NOW, at(10))), 'waiting', at(5));
    expect(take(barn, at(4), at(14))).toBeUndefined();
    expect(take(barn, at(5), at(15))?.tries).toBe(2);
  });

  it.each(['sent', 'failed'] as const)('never hands out a letter again that is %s', (state) => {
    const barn = openBarn();
    queue(barn, 'a');
    settle(barn, taken(take(barn, NOW, at(10))), state);
    expect(take(barn, at(999_999), at(999_999))).toBeUndefined();
  });

  it('hands out the letter that has waited longest first, whichever collection’s it is', () => {
    const barn = openBarn();
    const other = openBarn(barn.store, 'The shed');
    queue(barn, 'a');
    queue(other, 'b');
    settle(barn, taken(take(barn, NOW, at(10))), 'waiting', at(5));
    const order = [1, 2].map(() => take(barn, at(30), at(40))?.id);
    expect(order).toEqual(['b', 'a']);
  });

  it('counts what a delivery would try: what is due, and what a dead sender left', () => {
    const barn = openBarn();
    for (const id of ['a', 'b', 'c']) queue(barn, id);
    expect(waitingLetters(barn.store, at(-1), at(-1))).toBe(0);
    expect(waitingLetters(barn.store, NOW, NOW)).toBe(3);
    take(barn, NOW, at(10));
    settle(barn, taken(take(barn, NOW, at(10))), 'waiting', at(5));
    expect(waitingLetters(barn.store, NOW, NOW)).toBe(1);
    expect(waitingLetters(barn.store, at(5), at(5))).toBe(2);
    expect(waitingLetters(barn.store, at(10), at(10))).toBe(3);
  });
});

describe('settling an attempt', () => {
  it('records what was answered, and when the letter was sent', () => {
    const barn = openBarn();
    queue(barn, 'a');
    settle(barn, taken(take(barn, NOW, at(10))), 'sent');
    expect(findLetter(barn.store, barn.acting.collectionId, 'a')).toMatchObject({
      letter: { state: 'sent', sentAt: at(1), leaseUntil: null, tries: 1 },
      attempts: [{ at: at(1), ok: true, answer: '250 OK' }],
    });
  });

  it('keeps every attempt in order', () => {
    const barn = openBarn();
    queue(barn, 'a');
    settle(barn, taken(take(barn, NOW, at(10))), 'waiting', at(5));
    const again = taken(take(barn, at(5), at(15)));
    settleLetter(barn.store, again, { at: at(6), ok: false, answer: 'No', state: 'failed', nextTryAt: at(6) });
    const found = findLetter(barn.store, barn.acting.collectionId, 'a');
    expect(found?.attempts.map((one) => one.at)).toEqual([at(1), at(6)]);
    expect(found?.letter).toMatchObject({ state: 'failed', sentAt: null });
    expect(failedLetters(barn.store, barn.acting.collectionId)).toBe(1);
  });
});

describe('queueing', () => {
  it('writes letters, what they say and the sweep together', () => {
    const barn = openBarn();
    const part = partOf(barn, carIn(barn), 'wiring');
    const { collectionId, personId } = barn.acting;
    queue(barn, 'a', [{ partId: part.id, stage: 'look' }]);
    expect(lettersOf(barn.store, collectionId).map(({ id }) => id)).toEqual(['a']);
    expect(saidTo(barn.store, collectionId, personId, TODAY)).toEqual([
      { partId: part.id, stage: 'look', saidOn: TODAY },
    ]);
    expect(sweptAt(barn.store, collectionId, TODAY)).toBe(NOW);
    expect(lastFinishedSweep(barn.store)).toBe(NOW);
  });

  it('writes nothing at all where one letter’s message id was used before', () => {
    const barn = openBarn();
    const { collectionId, personId } = barn.acting;
    const part = partOf(barn, carIn(barn), 'wiring');
    const said = [{ partId: part.id, stage: 'look' as const, saidOn: TODAY }];
    const twin = { ...newLetter(barn.acting, 'b', NOW), messageId: newLetter(barn.acting, 'a', NOW).messageId };
    const written = [
      { letter: newLetter(barn.acting, 'a', NOW), said, told: [] },
      { letter: twin, said: [], told: [] },
    ];
    expect(() => queueLetters(barn.store, swept(collectionId, TODAY), written)).toThrow(/UNIQUE.*message_id/);
    expect(lettersOf(barn.store, collectionId)).toEqual([]);
    expect(saidTo(barn.store, collectionId, personId, TODAY)).toEqual([]);
    expect(sweptAt(barn.store, collectionId, TODAY)).toBeNull();
  });

  it('marks a day as swept again without a fault', () => {
    const barn = openBarn();
    queueLetters(barn.store, swept(barn.acting.collectionId, TODAY), []);
    queueLetters(barn.store, { ...swept(barn.acting.collectionId, TODAY), finishedAt: at(60) }, []);
    expect(lastFinishedSweep(barn.store)).toBe(at(60));
  });

  it('was not told in a letter that was given up, and can be told again the same day', () => {
    const barn = openBarn();
    const { collectionId, personId } = barn.acting;
    const partId = partOf(barn, carIn(barn), 'wiring').id;
    queue(barn, 'a', [{ partId, stage: 'look' }]);
    settle(barn, taken(take(barn, NOW, at(10))), 'failed');
    expect(saidTo(barn.store, collectionId, personId, TODAY)).toEqual([]);
    queue(barn, 'b', [{ partId, stage: 'look' }]);
    expect(saidTo(barn.store, collectionId, personId, TODAY)).toHaveLength(1);
  });

  it('said as on a day ahead silences nothing before that day, and does not count as its sweep', () => {
    const barn = openBarn();
    const { collectionId, personId } = barn.acting;
    const partId = partOf(barn, carIn(barn), 'wiring').id;
    const said = [{ partId, stage: 'look' as const, saidOn: '2027-04-01' as const }];
    const letter = newLetter(barn.acting, 'a', NOW);
    queueLetters(barn.store, swept(collectionId, '2027-04-01', true), [{ letter, said, told: [] }]);
    expect(saidTo(barn.store, collectionId, personId, '2027-03-31')).toEqual([]);
    expect(saidTo(barn.store, collectionId, personId, '2027-04-01')).toHaveLength(1);
    expect(sweptAt(barn.store, collectionId, '2027-04-01')).toBeNull();
  });

  it('remembers of each stage of a part the day it was last said', () => {
    const barn = openBarn();
    const { collectionId, personId } = barn.acting;
    const partId = partOf(barn, carIn(barn), 'wiring').id;
    for (const [id, saidOn] of [
      ['a', '2025-01-01'],
      ['b', '2026-01-01'],
    ] as const)
      queueLetters(barn.store, swept(collectionId, saidOn), [
        { letter: newLetter(barn.acting, id, NOW), said: [{ partId, stage: 'look', saidOn }], told: [] },
      ]);
    expect(saidTo(barn.store, collectionId, personId, TODAY)).toEqual([
      { partId, stage: 'look', saidOn: '2026-01-01' },
    ]);
  });
});

describe('one collection', () => {
  it('sees none of another one’s letters, sweeps or failures', () => {
    const barn = openBarn();
    const other = openBarn(barn.store, 'The shed');
    const part = partOf(other, carIn(other), 'wiring');
    queue(other, 'theirs', [{ partId: part.id, stage: 'look' }]);
    settle(other, taken(take(other, NOW, at(10))), 'failed');
    const { collectionId, personId } = barn.acting;
    expect(lettersOf(barn.store, collectionId)).toEqual([]);
    expect(findLetter(barn.store, collectionId, 'theirs')).toBeUndefined();
    expect(failedLetters(barn.store, collectionId)).toBe(0);
    expect(sweptAt(barn.store, collectionId, TODAY)).toBeNull();
    expect(saidTo(barn.store, collectionId, personId, TODAY)).toEqual([]);
    expect(saidTo(barn.store, collectionId, other.acting.personId, TODAY)).toEqual([]);
    expect(failedLetters(barn.store, other.acting.collectionId)).toBe(1);
  });
});
