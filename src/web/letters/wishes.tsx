/** Which letters one person gets, when, by which doors, and this person’s calendar. */
import { openFeed } from '../../acts/calendar-feed.ts';
import type { Fault } from '../../acts/fault.ts';
import { setWishes } from '../../acts/wishes.ts';
import { SEVERITIES, type Severity } from '../../catalogue/kind.ts';
import { dayInWords, MONTHS } from '../../dates/words.ts';
import { SCOPES, type Scope } from '../../notices/calendar.ts';
import { type CarRow, carsOf } from '../../store/cars.ts';
import { changeScopes, endFeed, feedOf } from '../../store/feeds.ts';
import type { Member } from '../../store/people.ts';
import { FEED_FORM, readForm, WISHES_FORM, type WishesForm } from '../forms.ts';
import { A, FaultSummary, Faults, faultsOf, Post, page, useVisit } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { at, type Ctx } from '../visit.ts';
import { CalendarPart } from './calendar.tsx';

const memberInPath = (c: Ctx): Member | undefined =>
  c.get('visit').members.find(({ id }) => id === c.req.param('personId'));

export const wishesPage = (c: Ctx) => {
  const member = memberInPath(c);
  return member ? showWishes(c, member, formOf(c, member), []) : notFound(c, 'member');
};

export const saveWishes = async (c: Ctx) => {
  const form = await readForm(c, WISHES_FORM);
  const member = memberInPath(c);
  if (!member) return notFound(c, 'member');
  const visit = c.get('visit');
  const outcome = setWishes(c.get('around').store, visit.collection.id, member, form);
  if (!outcome.ok) return showWishes(c, member, form, outcome.faults);
  return c.redirect(at(visit, `/members/${member.id}/letters?saved=yes`), 303);
};

/** Opens it, gives it another address (the old one leads nowhere from then on), or only changes what stands in it. */
export const saveCalendar = async (c: Ctx) => {
  const { scopes, keep } = await readForm(c, FEED_FORM);
  const member = memberInPath(c);
  if (!member) return notFound(c, 'member');
  const { store, site } = c.get('around');
  const visit = c.get('visit');
  const { collection, now } = visit;
  if (keep) {
    changeScopes(store, collection.id, member.id, scopesIn(scopes));
    return c.redirect(at(visit, `/members/${member.id}/letters?saved=yes`), 303);
  }
  const secret = openFeed(store, { collectionId: collection.id, personId: member.id, scopes: scopesIn(scopes) }, now);
  return showWishes(c, member, formOf(c, member), [], site.href(`/feed/${secret}.ics`));
};

export const endCalendar = (c: Ctx) => {
  const member = memberInPath(c);
  if (!member) return notFound(c, 'member');
  const visit = c.get('visit');
  endFeed(c.get('around').store, visit.collection.id, member.id);
  return c.redirect(at(visit, `/members/${member.id}/letters#calendar`), 303);
};

const scopesIn = (ticked: readonly string[]): Scope[] => SCOPES.filter((scope) => ticked.includes(scope));

const formOf = (c: Ctx, member: Member): WishesForm => {
  const cars = carsOf(c.get('around').store, c.get('visit').collection.id);
  const [fromMonth = '', fromDay = ''] = member.quietFrom?.split('-') ?? [];
  const [toMonth = '', toDay = ''] = member.quietTo?.split('-') ?? [];
  const plain = (text: string): string => text.replace(/^0/, '');
  return {
    letters: member.letters,
    hour: member.hour === null ? '' : String(member.hour),
    listed: cars.map(({ id }) => id),
    cars: cars.map(({ id }) => id).filter((id) => !member.notCars.includes(id)),
    severities: SEVERITIES.filter((one) => !member.notSeverities.includes(one)),
    repeatDays: member.repeatDays === 0 ? '' : String(member.repeatDays),
    quietFromDay: plain(fromDay),
    quietFromMonth: plain(fromMonth),
    quietToDay: plain(toDay),
    quietToMonth: plain(toMonth),
    yearlyMonth: member.yearlyMonth === null ? '' : String(member.yearlyMonth),
    pushUrl: member.pushUrl ?? '',
    webhookUrl: member.webhookUrl ?? '',
  };
};

/** `address`: that of a calendar just opened, which is shown this once. */
const showWishes = (
  c: Ctx,
  member: Member,
  form: WishesForm,
  faults: readonly Fault[],
  address: string | null = null,
) => {
  const cars = carsOf(c.get('around').store, c.get('visit').collection.id).filter(
    ({ ours, leftOn }) => ours && leftOn === null,
  );
  const { person } = c.get('visit');
  const saved = c.req.query('saved') === 'yes';
  return page(
    c,
    `Letters to ${member.name}`,
    <>
      <p class="crumb">
        <A to="/collection">Collection</A>
      </p>
      <h1>Letters to {member.name}</h1>
      <FaultSummary faults={faults} />
      {saved && (
        <p class="understood" role="status">
          Saved. It counts from the next letter on, also for one that waits.
        </p>
      )}
      {member.stoppedOn !== null && (
        <p class="fault">
          {member.name} stopped all letters on {dayInWords(member.stoppedOn)} by the link in one. Saving with letters on
          starts them again{person.id === member.id ? '' : ': ask first'}.
        </p>
      )}
      <WishesFields member={member} form={form} faults={faults} cars={cars} />
      <CalendarPart
        member={member}
        feed={feedOf(c.get('around').store, c.get('visit').collection.id, member.id)}
        address={address}
      />
    </>,
    faults.length > 0 ? 422 : 200,
  );
};

const SEVERITY_WORDS: Readonly<Record<Severity, string>> = {
  safety: 'can hurt somebody (always told)',
  strands: 'leaves you standing',
  engine: 'ruins the engine',
  damage: 'damages the car',
  nuisance: 'is a nuisance',
  cosmetic: 'is a matter of looks',
};

interface Fields {
  member: Member;
  form: WishesForm;
  faults: readonly Fault[];
  cars: readonly CarRow[];
}

const WishesFields = ({ member, form, faults, cars }: Fields) => {
  const { collection } = useVisit();
  return (
    <Post to={`/members/${member.id}/letters`} class="stacked">
      <label class="tick">
        <input type="checkbox" name="letters" checked={form.letters} /> Gets the collection’s letters
      </label>
      <p class="hint">Off: only the rounds of a car this person looks in on.</p>
      <label>
        Hour of the day from which the letter is written (time zone {collection.timeZone})
        <input name="hour" inputmode="numeric" value={form.hour} {...faultsOf(faults, 'hour', 'hour-hint')} />
      </label>
      <p class="hint" id="hour-hint">
        0 to 23; empty: the server’s own hour.
      </p>
      <Faults faults={faults} field="hour" />
      {cars.length > 0 && (
        <fieldset class="targets">
          <legend>Cars</legend>
          {cars.map(({ id, name }) => (
            <label>
              <input type="hidden" name="listed" value={id} />
              <input type="checkbox" name="cars" value={id} checked={form.cars.includes(id)} /> <span>{name}</span>
            </label>
          ))}
        </fieldset>
      )}
      <fieldset class="targets">
        <legend>What its failure</legend>
        {SEVERITIES.map((one) => (
          <label>
            <input
              type="checkbox"
              name="severities"
              value={one}
              checked={one === 'safety' || form.severities.includes(one)}
              disabled={one === 'safety'}
            />{' '}
            <span>{SEVERITY_WORDS[one]}</span>
          </label>
        ))}
      </fieldset>
      <label>
        Days after which what can hurt somebody is told again, until it is answered
        <input
          name="repeatDays"
          inputmode="numeric"
          value={form.repeatDays}
          {...faultsOf(faults, 'repeatDays', 'repeat-hint')}
        />
      </label>
      <p class="hint" id="repeat-hint">
        Empty: never again. Everything else is told once.
      </p>
      <Faults faults={faults} field="repeatDays" />
      <QuietFields form={form} faults={faults} />
      <label>
        Month of the yearly letter with the whole collection
        <select name="yearlyMonth" {...faultsOf(faults, 'yearlyMonth', 'yearly-hint')}>
          <option value="">none</option>
          {MONTHS.map((name, n) => (
            <option value={String(n + 1)} selected={form.yearlyMonth === String(n + 1)}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <p class="hint" id="yearly-hint">
        It comes on the first morning of that month, in a quiet season, too.
      </p>
      <Faults faults={faults} field="yearlyMonth" />
      <DoorFields member={member} form={form} faults={faults} />
      <button>Save</button>
    </Post>
  );
};

const QuietFields = ({ form, faults }: Pick<Fields, 'form' | 'faults'>) => (
  <fieldset {...faultsOf(faults, 'quiet', 'quiet-hint')}>
    <legend>Quiet season</legend>
    <div class="row">
      <DayOfYear name="quietFrom" label="from" day={form.quietFromDay} month={form.quietFromMonth} />
      <DayOfYear name="quietTo" label="to" day={form.quietToDay} month={form.quietToMonth} />
    </div>
    <p class="hint" id="quiet-hint">
      In it only what newly is past, or condemned by a reading, and can hurt somebody is told, and what a lay-up or a
      return has on its day. The rest waits and comes in one letter after it.
    </p>
    <Faults faults={faults} field="quiet" />
  </fieldset>
);

const DayOfYear = ({ name, label, day, month }: { name: string; label: string; day: string; month: string }) => (
  <>
    <label>
      {label} day <input name={`${name}Day`} inputmode="numeric" size={3} value={day} />
    </label>
    <label>
      month{' '}
      <select name={`${name}Month`}>
        <option value="">–</option>
        {MONTHS.map((word, n) => (
          <option value={String(n + 1)} selected={month === String(n + 1)}>
            {word}
          </option>
        ))}
      </select>
    </label>
  </>
);

const DoorFields = ({ member, form, faults }: Pick<Fields, 'member' | 'form' | 'faults'>) => (
  <details open={form.pushUrl !== '' || form.webhookUrl !== ''}>
    <summary>Other doors</summary>
    <p class="hint">
      Each gets a copy of every letter. An address within the server’s own network is refused unless{' '}
      <code>HOOKS_MAY_BE_PRIVATE=true</code> is set for the server.{' '}
      {member.email ? '' : 'Without a mail address the first of them is the letter itself.'}
    </p>
    <label>
      Plain post: subject and address of the letter, as text, by POST to
      <input name="pushUrl" inputmode="url" value={form.pushUrl} {...faultsOf(faults, 'pushUrl')} />
    </label>
    <Faults faults={faults} field="pushUrl" />
    <label>
      Signed document (JSON, Standard Webhooks) by POST to
      <input name="webhookUrl" inputmode="url" value={form.webhookUrl} {...faultsOf(faults, 'webhookUrl')} />
    </label>
    <Faults faults={faults} field="webhookUrl" />
    {member.webhookSecret && (
      <p class="hint">
        Its key: <code class="long">whsec_{member.webhookSecret}</code>
      </p>
    )}
  </details>
);
