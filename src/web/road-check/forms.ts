/** What the forms of the road check send. */
import { z } from 'zod';
import { LINK_LIVES, type LinkLife } from '../../acts/guest-links.ts';
import type { WalkGiven } from '../../acts/road-check.ts';
import { line, lines } from '../forms.ts';

/** Answers come as walk.<look>. */
export const WALK_FORM = z.object({ by: line, note: lines }).catchall(z.string().trim().max(40));
export type WalkForm = z.infer<typeof WALK_FORM>;

export const walkIn = (form: WalkForm): WalkGiven => ({
  by: form.by,
  note: form.note,
  answers: Object.fromEntries(
    Object.entries(form).flatMap(([name, answer]) =>
      name.startsWith('walk.') ? [[name.slice('walk.'.length), answer]] : [],
    ),
  ),
});

export const LINK_FORM = z.object({
  guest: line,
  life: z.enum(Object.keys(LINK_LIVES) as [LinkLife, ...LinkLife[]]).default('day'),
});
