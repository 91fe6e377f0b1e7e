import { describe, expect, it } from 'vitest';
import type { CivilDate } from '../../src/dates/civil.ts';
import type { Stage } from '../../src/notices/owed.ts';
import { failedLetters, findLetter, type LetterRow, lettersOf, seeLetter } from '../../src/store/letters.ts';
import {
  claimLetter,
  lastFinishedSweep,
  markSwept,
  queueLetters,
  type Swept,
  settleLetter,
  sweptAt,
  waitingLetters,
} from '../../src/store/outbox.ts';
import { saidTo } from '../../src/store/told.ts';
import { type Barn, carIn, openBarn, partOf, TODAY } from '../support/cars.ts';
import { justLetter, newLetter } from '../support/letters.ts';

const NOW = '2026-11-25T07:00:00.000Z';
const at = (minutes: number): string => new Date(Date.parse(NOW) + minutes * 60_000).toISOString();

const swept = ({ acting: { collectionId, personId } }: Barn, day: CivilDate): Swept => ({
  collectionId,
  people: [personId],
  day,
  finishedAt: NOW,
});

const sweptOn = ({ store, acting: { collectionId, personId } }: Barn, day: CivilDate): string | null =>
  sweptAt(store, collectionId, personId, day);

const heard = ({ store, acting: { collectionId, personId } }: Barn, day: CivilDate = TODAY) =>
  saidTo(store, { collectionId, personId, day, besides: null });

const queue = (barn: Barn, id: string, said: { partId: string; stage: Stage }[] = []): void => {
  const lines = said.map((line) => ({ ...line, saidOn: TODAY }));
  queueLetters(barn.store, [{ ...justLetter(newLetter(barn.acting, id, NOW)), said: lines }]);
};

const taken = (letter: LetterRow | undefined): LetterRow => {
  if (!letter) throw new Error('No letter was due');
  return letter;
};

const settle = (barn: Barn, letter: LetterRow, state: 'sent' | 'waiting' | 'failed', nextTryAt = NOW): void =>
  settleLetter(barn.store, letter, {
    at: at(1),
    ok: state === 'sent',
    answer: '250 OK',
    state,
    why: null,
    inDoubt: false,
    nextTryAt,
  });

/** Claims what is due at an instant. */
const take = (barn: Barn, now: string, leaseUntil: string) =>
  claimLetter(barn.store, { ...dueAt(now), leaseUntil, except: [] });

/** What is put off for more than a day was put off by a clock that was wrong. */
const dueAt = (now: string) => ({
  now,
  dueBy: now,
  beyond: new Date(Date.parse(now) + 86_400_000).toISOString(),
});

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
    expect(waitingLetters(barn.store, dueAt(at(-1)))).toBe(0);
    expect(waitingLetters(barn.store, dueAt(NOW))).toBe(3);
    take(barn, NOW, at(10));
    settle(barn, taken(take(barn, NOW, at(10))), 'waiting', at(5));
    expect(waitingLetters(barn.store, dueAt(NOW))).toBe(1);
    expect(waitingLetters(barn.store, dueAt(at(5)))).toBe(2);
    expect(waitingLetters(barn.store, dueAt(at(10)))).toBe(3);
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
    settleLetter(barn.store, again, {
      at: at(6),
      ok: false,
      answer: 'No',
      state: 'failed',
      why: 'refused',
      inDoubt: false,
      nextTryAt: at(6),
    });
    const found = findLetter(barn.store, barn.acting.collectionId, 'a');
    expect(found?.attempts.map((one) => one.at)).toEqual([at(1), at(6)]);
    expect(found?.letter).toMatchObject({ state: 'failed', sentAt: null });
    expect(failedLetters(barn.store, barn.acting.collectionId)).toBe(1);
  });
});

describe('queueing', () => {
  it('writes letters and what they say together', () => {
    const barn = openBarn();
    const part = partOf(barn, carIn(barn), 'wiring');
    const { collectionId } = barn.acting;
    queue(barn, 'a', [{ partId: part.id, stage: 'look' }]);
    expect(lettersOf(barn.store, collectionId).map(({ id }) => id)).toEqual(['a']);
    expect(heard(barn)).toEqual([{ partId: part.id, stage: 'look', saidOn: TODAY }]);
  });

  it('writes nothing at all where one letter’s message id was used before', () => {
    const barn = openBarn();
    const { collectionId } = barn.acting;
    const part = partOf(barn, carIn(barn), 'wiring');
    const said = [{ partId: part.id, stage: 'look' as const, saidOn: TODAY }];
    const twin = { ...newLetter(barn.acting, 'b', NOW), messageId: newLetter(barn.acting, 'a', NOW).messageId };
    const written = [{ ...justLetter(newLetter(barn.acting, 'a', NOW)), said }, justLetter(twin)];
    expect(() => queueLetters(barn.store, written)).toThrow(/UNIQUE.*message_id/);
    expect(lettersOf(barn.store, collectionId)).toEqual([]);
    expect(heard(barn)).toEqual([]);
  });

  it('marks a day as swept again without a fault', () => {
    const barn = openBarn();
    markSwept(barn.store, swept(barn, TODAY));
    markSwept(barn.store, { ...swept(barn, TODAY), finishedAt: at(60) });
    expect(sweptOn(barn, TODAY)).toBe(at(60));
    expect(lastFinishedSweep(barn.store)).toBe(at(60));
  });

  it('was not told in a letter that was given up, and can be told again the same day', () => {
    const barn = openBarn();
    const partId = partOf(barn, carIn(barn), 'wiring').id;
    queue(barn, 'a', [{ partId, stage: 'look' }]);
    settle(barn, taken(take(barn, NOW, at(10))), 'failed');
    expect(heard(barn)).toEqual([]);
    queue(barn, 'b', [{ partId, stage: 'look' }]);
    expect(heard(barn)).toHaveLength(1);
  });

  it('said as on a day ahead silences nothing before that day', () => {
    const barn = openBarn();
    const partId = partOf(barn, carIn(barn), 'wiring').id;
    const said = [{ partId, stage: 'look' as const, saidOn: '2027-04-01' as const }];
    const letter = newLetter(barn.acting, 'a', NOW);
    queueLetters(barn.store, [{ ...justLetter({ ...letter, ahead: true }), said }]);
    expect(heard(barn, '2027-03-31')).toEqual([]);
    expect(heard(barn, '2027-04-01')).toHaveLength(1);
  });

  it('remembers of each stage of a part the day it was last said', () => {
    const barn = openBarn();
    const partId = partOf(barn, carIn(barn), 'wiring').id;
    for (const [id, saidOn] of [
      ['a', '2025-01-01'],
      ['b', '2026-01-01'],
    ] as const)
      queueLetters(barn.store, [
        { ...justLetter(newLetter(barn.acting, id, NOW)), said: [{ partId, stage: 'look', saidOn }] },
      ]);
    expect(heard(barn)).toEqual([{ partId, stage: 'look', saidOn: '2026-01-01' }]);
  });
});

describe('a sender that overslept its lease', () => {
  it('and was answered “taken” after all ends the letter, whoever has tried it since', () => {
    const barn = openBarn();
    queue(barn, 'a');
    const slow = taken(take(barn, NOW, at(10)));
    const next = taken(take(barn, at(11), at(21)));
    settle(barn, next, 'waiting', at(30));
    settle(barn, slow, 'sent');
    expect(findLetter(barn.store, barn.acting.collectionId, 'a')?.letter.state).toBe('sent');
    expect(take(barn, at(60), at(70))).toBeUndefined();
  });

  it('and was answered “not now” undoes nothing', () => {
    const barn = openBarn();
    queue(barn, 'a');
    const slow = taken(take(barn, NOW, at(10)));
    const next = taken(take(barn, at(11), at(21)));
    settle(barn, next, 'sent');
    settle(barn, slow, 'waiting', at(30));
    expect(findLetter(barn.store, barn.acting.collectionId, 'a')?.letter.state).toBe('sent');
  });
});

describe('the list of letters', () => {
  it('begins with those given up that nobody has seen, however many came after', () => {
    const barn = openBarn();
    queue(barn, 'a');
    settle(barn, taken(take(barn, NOW, at(10))), 'failed');
    for (const id of ['b', 'c', 'd']) queue(barn, id);
    const { collectionId } = barn.acting;
    expect(lettersOf(barn.store, collectionId, 2).map(({ id }) => id)).toEqual(['a', 'd']);
    seeLetter(barn.store, collectionId, 'a', NOW);
    expect(lettersOf(barn.store, collectionId, 2).map(({ id }) => id)).toEqual(['d', 'c']);
  });
});

describe('one collection', () => {
  it('sees none of another one’s letters, sweeps or failures', () => {
    const barn = openBarn();
    const other = openBarn(barn.store, 'The shed');
    const part = partOf(other, carIn(other), 'wiring');
    queue(other, 'theirs', [{ partId: part.id, stage: 'look' }]);
    settle(other, taken(take(other, NOW, at(10))), 'failed');
    const { collectionId } = barn.acting;
    expect(lettersOf(barn.store, collectionId)).toEqual([]);
    expect(findLetter(barn.store, collectionId, 'theirs')).toBeUndefined();
    expect(failedLetters(barn.store, collectionId)).toBe(0);
    expect(sweptOn(barn, TODAY)).toBeNull();
    expect(heard(barn)).toEqual([]);
    const told = { collectionId, personId: other.acting.personId, day: TODAY, besides: null };
    expect(saidTo(barn.store, told)).toEqual([]);
    expect(failedLetters(barn.store, other.acting.collectionId)).toBe(1);
  });
});
