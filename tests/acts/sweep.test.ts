import { describe, expect, it } from 'vitest';
import { renewPart } from '../../src/acts/parts.ts';
import { type SweepResult, sweepCollection } from '../../src/acts/sweep.ts';
import { addDays, type CivilDate } from '../../src/dates/civil.ts';
import { siteAt } from '../../src/links.ts';
import { type LetterRow, lettersOf } from '../../src/store/letters.ts';
import { sweptAt } from '../../src/store/outbox.ts';
import { addMember, allCollections, changeMember, findCollection } from '../../src/store/people.ts';
import { type Barn, carIn, carOf, claim, date, must, openBarn, partOf, TODAY } from '../support/cars.ts';
import { tags, text } from '../support/html.ts';
import { allSent } from '../support/letters.ts';
import { record, typed } from '../support/readings.ts';

const { href } = siteAt(new URL('https://barn.example.org/cars-here'), 3000);

const sweep = (
  barn: Barn,
  today: CivilDate = TODAY,
  more: { dryRun?: boolean; href?: typeof href } = {},
): SweepResult => {
  const collection = findCollection(barn.store, barn.acting.collectionId);
  if (!collection) throw new Error('No collection');
  allSent(barn.store);
  return sweepCollection(barn.store, collection, {
    today,
    now: `${today}T07:00:00.000Z`,
    href,
    dryRun: false,
    ...more,
  });
};

const letters = (barn: Barn): LetterRow[] => lettersOf(barn.store, barn.acting.collectionId);
const onlyLetter = (barn: Barn): LetterRow => {
  const [letter, ...others] = letters(barn);
  if (!letter || others.length > 0) throw new Error(`There are ${others.length} letters besides the first`);
  return letter;
};

const rows = (barn: Barn, table: string): number =>
  barn.store.$client.prepare(`select count(*) from ${table}`).pluck().get() as number;

/** A car with plugs long past, a brake fluid past and a tire to look at; nothing else has a date. */
const oldCar = (barn: Barn, name: string): string => {
  const carId = carIn(barn, { name });
  date(barn, carId, 'spark-plugs', claim('fitted', '2015'));
  date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 June 2024'));
  date(barn, carId, 'tires-road', claim('made', '2318', { evidence: 'read on the part' }), 'front left');
  return carId;
};

/** A car with nothing to say but its brake fluid, filled on 1 December 2024: due since 1 October 2026. */
const quietCar = (barn: Barn, name: string): string => {
  const carId = carIn(barn, { name });
  date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 December 2024'));
  return carId;
};

describe('a sweep as on another day', () => {
  it.each(['1990-01-01', '2026-11-24', '2027-04-01'] as const)('(%s) is no morning, and no run of today’s', (today) => {
    const barn = openBarn();
    oldCar(barn, 'Merle Tourer');
    const collection = findCollection(barn.store, barn.acting.collectionId);
    if (!collection) throw new Error('No collection');
    sweepCollection(barn.store, collection, { today, now: `${TODAY}T07:00:00.000Z`, href, dryRun: false });
    expect([rows(barn, 'mornings'), rows(barn, 'runs')]).toEqual([0, 0]);
  });
});

describe('the day’s sweep', () => {
  it('writes one letter a person with all cars in it, the one that needs a hand first on top', () => {
    const barn = openBarn();
    quietCar(barn, 'Alder Coupe');
    oldCar(barn, 'Merle Tourer');
    carIn(barn, { name: 'Nothing Known' });
    expect(sweep(barn)).toEqual({
      letters: [
        { to: 'ada@example.org', subject: '2 past, 1 due, 1 to look at: Merle Tourer and 1 more car', lines: 4 },
      ],
      withoutAddress: [],
      refused: [],
      troubles: [],
    });
    const letter = onlyLetter(barn);
    expect(letter).toMatchObject({ recipient: 'ada@example.org', day: TODAY, state: 'waiting', tries: 0 });
    const told = letter.text.match(/^(MERLE TOURER|ALDER COUPE|NOTHING KNOWN|\[.*)/gm);
    expect(told).toEqual([
      'MERLE TOURER',
      '[Past, safety] Brake fluid, glycol (DOT 3, 4, 5.1)',
      '[Look, safety] Road tire, front left',
      '[Past] Spark plugs',
      'ALDER COUPE',
      '[Due, safety] Brake fluid, glycol (DOT 3, 4, 5.1)',
    ]);
  });

  it('writes no letter where there is no news, and marks the day as swept', () => {
    const barn = openBarn();
    carIn(barn);
    expect(sweep(barn)).toEqual({ letters: [], withoutAddress: [], refused: [], troubles: [] });
    expect(letters(barn)).toEqual([]);
    expect(sweptAt(barn.store, barn.acting.collectionId, barn.acting.personId, TODAY)).not.toBeNull();
  });

  it('says nothing twice: not on the same day, not on the next, not four weeks later', () => {
    const barn = openBarn();
    oldCar(barn, 'Merle Tourer');
    sweep(barn);
    for (const day of [TODAY, addDays(TODAY, 1), addDays(TODAY, 29)])
      expect(sweep(barn, day), day).toEqual({ letters: [], withoutAddress: [], refused: [], troubles: [] });
    expect(letters(barn)).toHaveLength(1);
  });

  it('after days without a sweep tells what began meanwhile, once', () => {
    const barn = openBarn();
    quietCar(barn, 'Alder Coupe');
    expect(sweep(barn, '2026-11-25').letters[0]?.subject).toBe('1 due: Alder Coupe');
    expect(sweep(barn, '2026-12-01').letters).toEqual([]);
    // Past since 2 December; nobody was up for eight days.
    expect(sweep(barn, '2026-12-10').letters[0]?.subject).toBe('1 past: Alder Coupe');
    expect(sweep(barn, '2026-12-11').letters).toEqual([]);
  });

  it('told late of a part that went from a look to past, says only where it stands now', () => {
    const barn = openBarn();
    quietCar(barn, 'Alder Coupe');
    expect(sweep(barn, '2027-03-01').letters).toEqual([
      { to: 'ada@example.org', subject: '1 past: Alder Coupe', lines: 1 },
    ]);
  });

  it('tells a new part’s own stages again after a renewal', () => {
    const barn = openBarn();
    const carId = quietCar(barn, 'Alder Coupe');
    sweep(barn, '2026-12-10');
    const here = { part: partOf(barn, carId, 'brake-fluid-glycol'), car: carOf(barn, carId).facts };
    const acting = { ...barn.acting, today: '2026-12-11' as CivilDate };
    must(renewPart(barn.store, acting, here, { why: '', note: '', claims: [claim('filled', '11 December 2026')] }));
    expect(sweep(barn, '2026-12-12').letters).toEqual([]);
    expect(sweep(barn, '2028-06-11').letters[0]?.subject).toBe('1 to look at: Alder Coupe');
  });

  it('keeps to its own collection', () => {
    const barn = openBarn();
    oldCar(openBarn(barn.store, 'The shed'), 'Their Six');
    expect(sweep(barn).letters).toEqual([]);
    expect(allCollections(barn.store)).toHaveLength(2);
  });
});

describe('a battery that is read', () => {
  /** A car whose battery was made on a day, or on none that is known; nothing else has a date. */
  const batteryCar = (made: string | null) => {
    const barn = openBarn();
    const carId = carIn(barn, { name: 'Alder Coupe' });
    if (made) date(barn, carId, 'battery-flooded', claim('made', made));
    const { id } = partOf(barn, carId, 'battery-flooded');
    const late = (day: CivilDate, text: string, writtenOn: CivilDate, gauge = 'rest-voltage') =>
      must(record(barn, carId, [typed(id, gauge, text, { day, warmth: '27' })], writtenOn));
    const read = (day: CivilDate, text: string, gauge?: string) => late(day, text, day, gauge);
    return { barn, id, read, late };
  };
  const told = (barn: Barn, day: CivilDate): string | undefined => sweep(barn, day).letters[0]?.subject;

  it('under its threshold is mailed on the day after, with what was read and what to do', () => {
    const { barn, read, id } = batteryCar('June 2026');
    expect(told(barn, '2026-11-30')).toBeUndefined();
    read('2026-12-01', '12,31');
    expect(told(barn, '2026-12-02')).toBe('1 to act on by reading: Alder Coupe');
    const letter = onlyLetter(barn);
    expect(letter.text).toContain('Rest voltage 12.31 V on 1 December 2026: act.');
    expect(letter.text).toContain('Do: Rest voltage: under 12.40');
    expect(letter.text).toContain(`https://barn.example.org/cars-here/parts/${id}`);
    expect(text(letter.html)).toContain('Rest voltage 12.31 V on 1 December 2026: act.');
  });

  it('is mailed also where it has no date at all', () => {
    const { barn, read } = batteryCar(null);
    read('2026-12-01', '12.31');
    expect(told(barn, '2026-12-02')).toBe('1 to act on by reading: Alder Coupe');
    expect(onlyLetter(barn).text).toContain('[Act on its reading] Battery, flooded lead-acid');
    expect(told(barn, '2026-12-03')).toBeUndefined();
  });

  it('is mailed also where it is past by age, told long ago', () => {
    const { barn, read } = batteryCar('June 2012');
    expect(told(barn, '2026-11-30')).toBe('1 past: Alder Coupe');
    read('2026-12-01', '12.31');
    expect(told(barn, '2026-12-02')).toBe('1 to act on by reading: Alder Coupe');
    expect(told(barn, '2026-12-03')).toBeUndefined();
  });

  it('over its threshold is no news', () => {
    const { barn, read } = batteryCar('June 2026');
    read('2026-12-01', '12.65');
    expect(told(barn, '2026-12-02')).toBeUndefined();
  });

  it('is told once a run of bad readings, and again after a good one in between', () => {
    const { barn, read } = batteryCar('June 2026');
    read('2026-12-01', '12.31');
    expect(told(barn, '2026-12-02')).toBe('1 to act on by reading: Alder Coupe');
    read('2026-12-05', '12.25');
    expect(told(barn, '2026-12-06')).toBeUndefined();
    read('2026-12-10', '12.65');
    expect(told(barn, '2026-12-11')).toBeUndefined();
    read('2026-12-20', '12.31');
    expect(told(barn, '2026-12-21')).toBe('1 to act on by reading: Alder Coupe');
    expect(told(barn, '2026-12-22')).toBeUndefined();
    expect(letters(barn)).toHaveLength(2);
  });

  it.each([
    ['a dated one', 'June 2026'],
    ['one without a date', null],
  ])('that sinks from watch to act is told again: %s', (_, made) => {
    const { barn, read } = batteryCar(made);
    read('2026-12-01', '12.45');
    expect(told(barn, '2026-12-02')).toBe('1 to watch by reading: Alder Coupe');
    expect(told(barn, '2026-12-03')).toBeUndefined();
    read('2026-12-10', '12.31');
    expect(told(barn, '2026-12-11')).toBe('1 to act on by reading: Alder Coupe');
    expect(told(barn, '2026-12-12')).toBeUndefined();
    // Better than it was, and no news.
    read('2026-12-15', '12.45');
    expect(told(barn, '2026-12-16')).toBeUndefined();
  });

  it('is told of a second gauge that turns bad later, and of that once', () => {
    const { barn, read } = batteryCar('June 2026');
    read('2026-12-01', '12.31');
    expect(told(barn, '2026-12-02')).toBe('1 to act on by reading: Alder Coupe');
    read('2026-12-05', '1.15', 'density');
    expect(told(barn, '2026-12-06')).toBe('1 to act on by reading: Alder Coupe');
    expect(letters(barn)[0]?.text).toContain('Density 1.150 SG on 5 December 2026');
    expect(told(barn, '2026-12-07')).toBeUndefined();
  });

  it('is told when it is written down, however long after it was read', () => {
    const { barn, read, late } = batteryCar('June 2026');
    read('2026-10-01', '12.45');
    expect(told(barn, '2026-10-02')).toBe('1 to watch by reading: Alder Coupe');
    read('2026-10-10', '12.65');
    late('2026-10-15', '12.31', '2026-10-25');
    expect(told(barn, '2026-10-26')).toBe('1 to act on by reading: Alder Coupe');
    expect(told(barn, '2026-10-27')).toBeUndefined();
  });

  it('is mailed once each day its estimate comes to: no reading for months', () => {
    const { barn, read } = batteryCar('June 2026');
    const { collectionId, personId } = barn.acting;
    changeMember(barn.store, collectionId, personId, { yearlyMonth: null });
    read('2026-12-01', '12.65');
    const mailed: [CivilDate, string][] = [];
    for (let day: CivilDate = '2026-12-02'; day <= '2027-08-31'; day = addDays(day, 1)) {
      const subject = told(barn, day);
      if (subject) mailed.push([day, subject]);
    }
    expect(mailed.length).toBeGreaterThan(1);
    expect(new Set(mailed.map(([, subject]) => subject))).toEqual(new Set(['1 to measure by estimate: Alder Coupe']));
    expect(mailed.every(([day]) => day >= '2026-12-31')).toBe(true);
    const text = letters(barn)[0]?.text;
    expect(text).toContain('[Measure it] Battery, flooded lead-acid');
    expect(text).toContain('Do: Charge it, or put it on a maintainer');
  });
});

describe('several members', () => {
  const member = (barn: Barn, name: string, email: string | null, wants = true): string =>
    addMember(barn.store, barn.acting.collectionId, { name, email, dateOrder: 'ask', letters: wants });

  it('each get a letter of their own, with a message id of its own', () => {
    const barn = openBarn();
    member(barn, 'Bram', 'bram@example.org');
    oldCar(barn, 'Merle Tourer');
    expect(sweep(barn).letters.map(({ to }) => to)).toEqual(['ada@example.org', 'bram@example.org']);
    const [one, other] = letters(barn);
    expect(one?.messageId).not.toBe(other?.messageId);
    expect(letters(barn).map((letter) => letter.text.split(',')[0])).toEqual(['Bram', 'Ada']);
  });

  it('get none if they do not want any', () => {
    const barn = openBarn();
    member(barn, 'Bram', 'bram@example.org', false);
    oldCar(barn, 'Merle Tourer');
    expect(sweep(barn).letters.map(({ to }) => to)).toEqual(['ada@example.org']);
  });

  it('without an address are named, and hear it all once they have one', () => {
    const barn = openBarn();
    const nell = member(barn, 'Nell', null);
    oldCar(barn, 'Merle Tourer');
    expect(sweep(barn).withoutAddress).toEqual(['Nell']);
    expect(sweep(barn).withoutAddress).toEqual(['Nell']);
    changeMember(barn.store, barn.acting.collectionId, nell, {
      name: 'Nell',
      email: 'nell@example.org',
      dateOrder: 'ask',
      letters: true,
    });
    expect(sweep(barn, addDays(TODAY, 1))).toEqual({
      letters: [{ to: 'nell@example.org', subject: '2 past, 1 to look at: Merle Tourer', lines: 3 }],
      withoutAddress: [],
      refused: [],
      troubles: [],
    });
  });

  it('who join later hear what the others were told before', () => {
    const barn = openBarn();
    oldCar(barn, 'Merle Tourer');
    sweep(barn);
    member(barn, 'Bram', 'bram@example.org');
    expect(sweep(barn, addDays(TODAY, 1)).letters.map(({ to, lines }) => [to, lines])).toEqual([
      ['bram@example.org', 3],
    ]);
  });
});

describe('a dry run', () => {
  it('answers what would be written and writes nothing', () => {
    const barn = openBarn();
    oldCar(barn, 'Merle Tourer');
    const dry = sweep(barn, TODAY, { dryRun: true });
    for (const table of ['letters', 'said', 'mornings']) expect(rows(barn, table), table).toBe(0);
    expect(dry.letters).toHaveLength(1);
    expect(sweep(barn)).toEqual(dry);
  });
});

describe('a letter', () => {
  const written = () => {
    const barn = openBarn();
    const carId = oldCar(barn, 'Merle & <Tourer>');
    sweep(barn);
    const letter = onlyLetter(barn);
    const tire = partOf(barn, carId, 'tires-road', 'front left').id;
    return { letter, carId, tire, open: carOf(barn, carId).parts.length - 3 };
  };

  it('gives the reason, the range of ages, what to do and the doubts in its text', () => {
    const { letter, tire } = written();
    expect(letter.text).toContain('Ada, this is new in “The barn” on 25 November 2026.');
    expect(letter.text).toContain(
      [
        '[Look, safety] Road tire, front left',
        '  Made 10 to 16 June 2018: 8 years',
        '  Practice of the trade: look from 5 years, replace by 10 years.',
        '  Wants a look since 10 June 2023 at the earliest (16 June 2023 at the latest); due from 10 March 2028 at the earliest (16 March 2028 at the latest). Judged by the oldest possible age.',
        '  Do: Look and test. Tread depth: Measure with a depth gauge at three places across the tread, and note the lowest.',
        `  https://barn.example.org/cars-here/parts/${tire}`,
      ].join('\n'),
    );
  });

  it('names the parts whose dates can’t clear them, and the cautions of the work, each once', () => {
    const { letter, open } = written();
    expect(letter.text).toContain(`${open} more parts are unproven: their dates can’t clear them.`);
    const cautions = letter.text.split('Before you work:\n')[1]?.split('\n\n')[0]?.split('\n') ?? [];
    expect(cautions.length).toBeGreaterThan(3);
    expect(new Set(cautions).size).toBe(cautions.length);
    expect(cautions.every((line) => line.startsWith('- '))).toBe(true);
  });

  it('links to its pages below the base path, in both parts', () => {
    const { letter, carId } = written();
    const links = tags(letter.html, 'a').map(({ href: to }) => to ?? '');
    expect(links).toContain(`https://barn.example.org/cars-here/cars/${carId}`);
    expect(links).toContain('https://barn.example.org/cars-here/practice');
    expect(links.filter((link) => !link.startsWith('https://barn.example.org/cars-here/'))).toEqual([]);
    for (const link of links) expect(letter.text).toContain(link.replace(/\?answer=[\w-]+$/, ''));
    expect(letter.messageId).toMatch(/^<digest\.[\w-]+@barn\.example\.org>$/);
  });

  it('says the same in its HTML part, with names escaped', () => {
    const { letter } = written();
    const html = text(letter.html);
    expect(letter.html).not.toContain('<Tourer>');
    expect(html).toContain('Merle & <Tourer>');
    const lines = letter.text
      .split('\n')
      .map((line) => line.trim())
      .filter((line) => line !== '' && !/^\[|https:|^MERLE|^Do:|^Before/.test(line))
      .map((line) => line.replace(/^- /, ''));
    expect(lines.length).toBeGreaterThan(12);
    for (const line of lines) expect(html).toContain(line);
    expect(html).toContain('Do: Look and test. Tread depth: Measure');
  });
});

describe('a letter and what it says', () => {
  it.each(['said', 'mornings'])('are written together or not at all: a failure at “%s” leaves neither', (table) => {
    const barn = openBarn();
    oldCar(barn, 'Merle Tourer');
    const sqlite = barn.store.$client;
    sqlite.exec(`create trigger full before insert on ${table} begin select raise(abort, 'no room'); end`);
    expect(() => sweep(barn)).toThrow('no room');
    for (const written of ['letters', 'said', 'mornings']) expect(rows(barn, written), written).toBe(0);
    sqlite.exec('drop trigger full');
    expect(sweep(barn).letters).toHaveLength(1);
    expect(rows(barn, 'said')).toBe(3);
  });
});
