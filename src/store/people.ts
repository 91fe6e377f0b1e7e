/** People, collections and who belongs to which. */
import { and, asc, eq } from 'drizzle-orm';
import { newId } from './ids.ts';
import { inTransaction, type Store } from './open.ts';
import { collections, memberships, people } from './schema.ts';

export type Person = typeof people.$inferSelect;
export type Collection = typeof collections.$inferSelect;
export type Member = Person & Omit<typeof memberships.$inferSelect, 'collectionId' | 'personId'>;
/** What must be said of a new member; everything else begins as usual. */
export type NewMember = Omit<Person, 'id'> & Pick<Member, 'letters'> & Partial<Omit<Member, 'id'>>;
/** Money begins as dollars at common rates until somebody says otherwise. */
export type NewCollection = Pick<Collection, 'name' | 'timeZone'> & Partial<Omit<Collection, 'id'>>;

export const allCollections = (store: Store): Collection[] =>
  store.select().from(collections).orderBy(asc(collections.id)).all();

export const findCollection = (store: Store, id: string): Collection | undefined =>
  store.select().from(collections).where(eq(collections.id, id)).get();

/** The members of a collection, longest known first. */
export const membersOf = (store: Store, collectionId: string): Member[] =>
  store
    .select()
    .from(memberships)
    .innerJoin(people, eq(people.id, memberships.personId))
    .where(eq(memberships.collectionId, collectionId))
    .orderBy(asc(people.id))
    .all()
    .map(({ people: person, memberships: { collectionId: _, personId, ...membership } }) => ({
      ...membership,
      ...person,
      id: personId,
    }));

export const addCollection = (
  store: Store,
  collection: NewCollection,
  owner: Omit<Person, 'id'>,
  ids = { collectionId: newId(), personId: newId() },
): { collectionId: string; personId: string } =>
  inTransaction(store, (tx) => {
    const { collectionId, personId } = ids;
    tx.insert(collections)
      .values({ ...collection, id: collectionId })
      .run();
    tx.insert(people)
      .values({ ...owner, id: personId })
      .run();
    tx.insert(memberships).values({ collectionId, personId, letters: true }).run();
    return ids;
  });

/** On an empty server: one collection with one person, so that the first page is already theirs. */
export const ensureCollection = (store: Store, timeZone: string): void =>
  inTransaction(store, () => {
    if (allCollections(store).length > 0) return;
    addCollection(store, { name: 'My cars', timeZone }, { name: 'Owner', email: null, dateOrder: 'ask' });
  });

export const changeCollection = (store: Store, id: string, change: Partial<Omit<Collection, 'id'>>): void => {
  store.update(collections).set(change).where(eq(collections.id, id)).run();
};

export const addMember = (store: Store, collectionId: string, member: NewMember, personId = newId()): string =>
  inTransaction(store, (tx) => {
    const { name, email, dateOrder, ...membership } = member;
    tx.insert(people).values({ id: personId, name, email, dateOrder }).run();
    tx.insert(memberships)
      .values({ ...membership, collectionId, personId })
      .run();
    return personId;
  });

/** Changes what is named; the rest stays. */
export const changeMember = (
  store: Store,
  collectionId: string,
  personId: string,
  change: Partial<Omit<Member, 'id'>>,
): void =>
  inTransaction(store, (tx) => {
    const { name, email, dateOrder, ...membership } = change;
    const person = given({ name, email, dateOrder });
    if (person) tx.update(people).set(person).where(eq(people.id, personId)).run();
    const changed = given(membership);
    if (changed)
      tx.update(memberships)
        .set(changed)
        .where(and(eq(memberships.collectionId, collectionId), eq(memberships.personId, personId)))
        .run();
  });

/** What was given at all; null where nothing was. */
const given = <T extends object>(change: T): T | null =>
  Object.values(change).some((value) => value !== undefined) ? change : null;
