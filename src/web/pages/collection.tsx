/** Collection: its name and time zone, who belongs to it, who gets letters, and for whom this browser acts. */
import { setCookie } from 'hono/cookie';
import { z } from 'zod';
import type { Fault } from '../../acts/fault.ts';
import { isTimeZone } from '../../clock.ts';
import { DATE_ORDERS, type DateOrder } from '../../dates/typed-point.ts';
import { dayInWords } from '../../dates/words.ts';
import { addCollection, addMember, changeCollection, changeMember, type Member } from '../../store/people.ts';
import { ACTING_FORM, COLLECTION_FORM, MEMBER_FORM, readForm } from '../forms.ts';
import { A, Faults, faultsOf, Post, page, useVisit } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { at, COOKIES, type Ctx } from '../visit.ts';

type MemberGiven = Pick<Member, 'name' | 'dateOrder' | 'letters'> & { email: string };

interface Given {
  /** Which form was rejected: the collection's, a member's id, or `new`. */
  form: string;
  name?: string;
  timeZone?: string;
  member?: MemberGiven;
  faults: readonly Fault[];
}

export const collectionPage = (c: Ctx) => show(c, { form: '', faults: [] });

const show = (c: Ctx, given: Given) => {
  const saved = given.faults.length === 0 && c.req.query('saved') === 'yes';
  return page(c, 'Collection', <CollectionShown given={given} saved={saved} />, given.faults.length > 0 ? 422 : 200);
};

export const saveCollection = async (c: Ctx) => {
  const visit = c.get('visit');
  const { name, timeZone } = await readForm(c, COLLECTION_FORM);
  const faults = collectionFaults(name, timeZone);
  if (faults.length > 0) return show(c, { form: 'collection', name, timeZone, faults });
  changeCollection(c.get('around').store, visit.collection.id, { name, timeZone });
  return c.redirect(at(visit, '/collection?saved=yes'), 303);
};

export const newCollection = async (c: Ctx) => {
  const visit = c.get('visit');
  const { name, timeZone } = await readForm(c, COLLECTION_FORM);
  const faults = collectionFaults(name, timeZone).map((fault) => ({ ...fault, field: `another-${fault.field}` }));
  if (faults.length > 0) return show(c, { form: 'another', name, timeZone, faults });
  const { name: person, email, dateOrder } = visit.person;
  const { collectionId } = addCollection(c.get('around').store, { name, timeZone }, { name: person, email, dateOrder });
  remember(c, COOKIES.collection, collectionId);
  return c.redirect(`${visit.site.base}/collection`, 303);
};

const collectionFaults = (name: string, timeZone: string): Fault[] => {
  const faults: Fault[] = [];
  if (name === '') faults.push({ field: 'name', message: 'Give the collection a name.' });
  if (!isTimeZone(timeZone))
    faults.push({
      field: 'timeZone',
      message: `“${timeZone}” is no time zone. Write one such as Europe/Lisbon or America/Denver.`,
    });
  return faults;
};

export const saveMember = async (c: Ctx) => {
  const visit = c.get('visit');
  const id = c.req.param('personId') ?? '';
  if (id !== 'new' && !visit.members.some((member) => member.id === id)) return notFound(c, 'member');
  const member = await readForm(c, MEMBER_FORM);
  const faults = memberFaults(member, id);
  if (faults.length > 0) return show(c, { form: id, member, faults });
  // Turned on again, letters that were stopped by a link come again.
  const known = { ...member, email: member.email || null, ...(member.letters ? { stoppedOn: null } : {}) };
  if (id === 'new') addMember(c.get('around').store, visit.collection.id, known);
  else changeMember(c.get('around').store, visit.collection.id, id, known);
  return c.redirect(at(visit, '/collection?saved=yes'), 303);
};

const memberFaults = ({ name, email }: MemberGiven, id: string): Fault[] => {
  const faults: Fault[] = [];
  if (name === '') faults.push({ field: `${id}-name`, message: 'Give a name.' });
  if (email !== '' && !z.email().safeParse(email).success)
    faults.push({ field: `${id}-email`, message: `“${email}” is no mail address.` });
  return faults;
};

export const actAs = async (c: Ctx) => {
  const visit = c.get('visit');
  const { collection, person } = await readForm(c, ACTING_FORM);
  if (collection) remember(c, COOKIES.collection, collection);
  if (person) remember(c, COOKIES.person, person);
  return c.redirect(at(visit, '/collection'), 303);
};

const remember = (c: Ctx, name: string, value: string): void =>
  setCookie(c, name, value, {
    path: `${c.get('visit').site.base}/`,
    httpOnly: true,
    sameSite: 'Lax',
    maxAge: 34_560_000,
  });

const CollectionShown = ({ given, saved }: { given: Given; saved: boolean }) => {
  const { collection, collections, person, members } = useVisit();
  const own = given.form === 'collection';
  return (
    <>
      <h1>Collection</h1>
      {saved && (
        <p class="understood" role="status">
          Saved.
        </p>
      )}
      <Post to="/collection" class="stacked">
        <NameAndZone
          prefix=""
          name={own ? (given.name ?? '') : collection.name}
          timeZone={own ? (given.timeZone ?? '') : collection.timeZone}
          faults={given.faults}
        />
        <button>Save the collection</button>
      </Post>
      <p>
        Money: {collection.currency}, {collection.laborLow} to {collection.laborHigh} for a workshop’s hour.{' '}
        <A to="/collection/money">Change it</A>
      </p>
      <h2>Who shares it</h2>
      <p class="hint">There is no sign-in yet: whoever can reach this machine’s own address sees everything.</p>
      {members
        .filter(({ stoppedOn }) => stoppedOn !== null)
        .map(({ name, stoppedOn }) => (
          <p class="fault">
            {name} stopped all letters on {stoppedOn && dayInWords(stoppedOn)} by the link in one.
          </p>
        ))}
      {members.map((member) => (
        <MemberForm
          id={member.id}
          member={given.form === member.id && given.member ? given.member : { ...member, email: member.email ?? '' }}
          faults={given.faults}
          title={member.name}
        />
      ))}
      <details open={given.form === 'new'}>
        <summary>Add a person</summary>
        <MemberForm
          id="new"
          member={
            given.form === 'new' && given.member
              ? given.member
              : { name: '', email: '', dateOrder: 'ask', letters: true }
          }
          faults={given.faults}
          title="Add a person"
        />
      </details>
      <h2>In this browser</h2>
      <Post to="/acting" class="row">
        <label>
          I am{' '}
          <select name="person">
            {members.map(({ id, name }) => (
              <option value={id} selected={id === person.id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <button>Remember</button>
      </Post>
      {collections.length > 1 && (
        <Post to="/acting" class="row">
          <label>
            Collection shown{' '}
            <select name="collection">
              {collections.map(({ id, name }) => (
                <option value={id} selected={id === collection.id}>
                  {name}
                </option>
              ))}
            </select>
          </label>
          <button>Show it</button>
        </Post>
      )}
      <details open={given.form === 'another'}>
        <summary>Start another collection</summary>
        <Post to="/collections" class="stacked">
          <NameAndZone
            prefix="another-"
            name={given.form === 'another' ? (given.name ?? '') : ''}
            timeZone={given.form === 'another' ? (given.timeZone ?? '') : collection.timeZone}
            faults={given.faults}
          />
          <button>Start it</button>
        </Post>
      </details>
    </>
  );
};

const NameAndZone = ({
  prefix,
  name,
  timeZone,
  faults,
}: {
  prefix: string;
  name: string;
  timeZone: string;
  faults: readonly Fault[];
}) => (
  <>
    <label>
      Name of the collection
      <input name="name" value={name} {...faultsOf(faults, `${prefix}name`)} />
    </label>
    <Faults faults={faults} field={`${prefix}name`} />
    <label>
      Time zone: days begin and letters are written by it
      <input name="timeZone" value={timeZone} autocomplete="off" {...faultsOf(faults, `${prefix}timeZone`)} />
    </label>
    <Faults faults={faults} field={`${prefix}timeZone`} />
  </>
);

const ORDER_WORDS: Readonly<Record<DateOrder, string>> = {
  'day first': '3/4/2015 is 3 April',
  'month first': '3/4/2015 is 4 March',
  ask: 'ask me each time',
};

const MemberForm = ({
  id,
  member,
  faults,
  title,
}: {
  id: string;
  member: MemberGiven;
  faults: readonly Fault[];
  title: string;
}) => (
  <Post to={`/members/${id}`} class="stacked member">
    <h3>{title}</h3>
    <label>
      Name
      <input name="name" value={member.name} {...faultsOf(faults, `${id}-name`)} />
    </label>
    <Faults faults={faults} field={`${id}-name`} />
    <label>
      Mail address
      <input name="email" type="email" value={member.email} {...faultsOf(faults, `${id}-email`)} />
    </label>
    <Faults faults={faults} field={`${id}-email`} />
    <fieldset class="targets">
      <legend>How this person writes dates</legend>
      {DATE_ORDERS.map((order) => (
        <label>
          <input type="radio" name="dateOrder" value={order} checked={order === member.dateOrder} />{' '}
          <span>{ORDER_WORDS[order]}</span>
        </label>
      ))}
    </fieldset>
    <label class="tick">
      <input type="checkbox" name="letters" checked={member.letters} /> Gets the collection’s letters
    </label>
    {id !== 'new' && (
      <p>
        <A to={`/members/${id}/letters`}>Which letters, when, and the calendar</A>
      </p>
    )}
    <button>Save</button>
  </Post>
);
