import { describe, expect, it } from 'vitest';
import { beginRevival, endRevival } from '../../src/acts/begin-revival.ts';
import { revivalHere } from '../../src/acts/revivals.ts';
import { addDays, type CivilDate } from '../../src/dates/civil.ts';
import type { Said } from '../../src/revival/journal.ts';
import { findCollection } from '../../src/store/people.ts';
import { writeEntries } from '../../src/store/revivals.ts';
import { type Barn, carIn, claim, date, must, openBarn, partOf, TODAY } from '../support/cars.ts';
import { sweepOn } from '../support/lay-ups.ts';
import { record, typed } from '../support/readings.ts';
import { INTAKE } from '../support/revivals.ts';

/** A car whose brake fluid is due, on its way back since today. */
const sleeping = () => {
  const barn = openBarn();
  const carId = carIn(barn, {});
  date(barn, carId, 'brake-fluid-glycol', claim('filled', '1 December 2024'));
  const id = must(beginRevival(barn.store, barn.acting, { ...INTAKE, car: { carId } }));
  const say = (day: CivilDate, ...said: readonly Said[]): void =>
    writeEntries(
      barn.store,
      barn.acting.collectionId,
      id,
      said.map((one) => ({ day, said: one, doneBy: 'Ada', note: 'Because.', recordedOn: day, recordedBy: null })),
    );
  return { barn, carId, id, say };
};
const subjects = (barn: Barn, on: CivilDate): string[] => sweepOn(barn, on).letters.map(({ subject }) => subject);
const lastLetter = (barn: Barn): string =>
  barn.store.$client.prepare('select text from letters order by id desc limit 1').pluck().get() as string;
const later = (days: number): CivilDate => addDays(TODAY, days);

describe('letters of a car on its way back', () => {
  it('are silent about its dates, and tell all of it once it has ended', () => {
    const { barn, id } = sleeping();
    expect(subjects(barn, TODAY)).toEqual([]);
    const collection = findCollection(barn.store, barn.acting.collectionId);
    const here = collection && revivalHere(barn.store, collection, id, later(1));
    if (!here) throw new Error('no return');
    must(endRevival(barn.store, { ...barn.acting, today: later(1) }, here, 'given up', ''));
    expect(subjects(barn, later(1))).toEqual([expect.stringMatching(/1 due/)]);
  });

  it('still tell what a reading says', () => {
    const { barn, carId } = sleeping();
    const { id } = partOf(barn, carId, 'brake-fluid-glycol');
    must(record(barn, carId, [typed(id, 'water', '4')]));
    expect(subjects(barn, TODAY)).toEqual([expect.stringMatching(/1 to act on by reading/)]);
  });

  it('tell a dated task once in the week before its day, and again once it has come back', () => {
    const { barn, say } = sleeping();
    const nuts: Said = { what: 'tick', step: 'wheel-nuts', act: 'do', state: 'done', cost: null, hours: null };
    const drive: Said = { what: 'run', run: 'b', ended: 'as planned', km: 2, notes: [], hubs: null };
    say(TODAY, nuts, drive);
    expect(subjects(barn, later(6))).toEqual([]);
    expect(subjects(barn, later(7))).toEqual([expect.stringMatching(/^1 dated task/)]);
    expect(lastLetter(barn)).toMatch(
      /\[Return to road\] Wheel nuts once more[\s\S]*After 80 to 160 km[\s\S]*\/revivals\/[^/]+\/steps\/retorque/,
    );
    expect(subjects(barn, later(8))).toEqual([]);
    say(later(9), { what: 'tick', step: 'retorque', act: 'do', state: 'done', cost: null, hours: null });
    say(later(10), nuts, drive);
    expect(subjects(barn, later(16))).toEqual([]);
    expect(subjects(barn, later(17))).toEqual([expect.stringMatching(/^1 dated task/)]);
  });

  it('tell the morning after a hot survey to look under it', () => {
    const { barn, say } = sleeping();
    say(TODAY, { what: 'survey', cycle: 1, moment: 'hot', spots: [] });
    expect(subjects(barn, TODAY)).toEqual([]);
    expect(subjects(barn, later(1))).toEqual([expect.stringMatching(/^1 dated task/)]);
    expect(subjects(barn, later(2))).toEqual([]);
  });

  it('tell a stop that waits, once, and the last day of soaking', () => {
    const { barn, say } = sleeping();
    say(
      TODAY,
      { what: 'seen', look: 'title', answer: 'unclear', value: null },
      { what: 'seen', look: 'turns', answer: 'stuck', value: null },
    );
    expect(subjects(barn, TODAY)).toEqual([expect.stringMatching(/^1 warning/)]);
    expect(subjects(barn, later(1))).toEqual([]);
    expect(subjects(barn, later(9))).toEqual([expect.stringMatching(/^1 dated task/)]);
    expect(subjects(barn, later(10))).toEqual([expect.stringMatching(/^1 warning/)]);
  });

  it('never speak of a car that is only looked at', () => {
    const barn = openBarn();
    const car = { name: 'Fennimore', built: '1987', start: 'hatchback-timing-belt', ours: false };
    must(beginRevival(barn.store, barn.acting, { ...INTAKE, car }));
    expect(subjects(barn, later(400))).toEqual([]);
  });

  it('write nothing on a dry run, so that it is told all the same', () => {
    const { barn, say } = sleeping();
    say(TODAY, { what: 'seen', look: 'title', answer: 'unclear', value: null });
    expect(sweepOn(barn, TODAY, { dryRun: true }).letters).toHaveLength(1);
    expect(sweepOn(barn, TODAY).letters).toHaveLength(1);
  });
});
