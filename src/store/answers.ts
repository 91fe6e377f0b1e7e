/** Answers people gave to letters. */
import { and, asc, eq } from 'drizzle-orm';
import { newId } from './ids.ts';
import { answers } from './letter-schema.ts';
import type { Store } from './open.ts';

export type AnswerRow = typeof answers.$inferSelect;

/** All of a collection, in the order they were given. */
export const answersIn = (store: Store, collectionId: string): AnswerRow[] =>
  store.select().from(answers).where(eq(answers.collectionId, collectionId)).orderBy(asc(answers.id)).all();

export const answersTo = (store: Store, collectionId: string, partId: string): AnswerRow[] =>
  store
    .select()
    .from(answers)
    .where(and(eq(answers.collectionId, collectionId), eq(answers.partId, partId)))
    .orderBy(asc(answers.id))
    .all();

export const addAnswer = (store: Store, answer: Omit<AnswerRow, 'id'>): void => {
  store
    .insert(answers)
    .values({ ...answer, id: newId() })
    .run();
};
