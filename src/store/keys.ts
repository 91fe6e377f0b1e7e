/** Keys this server made for itself; a restored backup brings its keys along, so links in letters sent before still work. */
import { eq } from 'drizzle-orm';
import { keys } from './letter-schema.ts';
import type { Store } from './open.ts';

/** The key of that name; `fresh` is kept where there is none yet. */
export const keyNamed = (store: Store, name: string, fresh: () => string): string => {
  const find = () => store.select({ value: keys.value }).from(keys).where(eq(keys.name, name)).get()?.value;
  const known = find();
  if (known !== undefined) return known;
  store.insert(keys).values({ name, value: fresh() }).onConflictDoNothing().run();
  return find() as string;
};
