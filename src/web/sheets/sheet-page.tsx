/** One sheet of a lay-up, made for a paper. */
import type { Child } from 'hono/jsx';
import { z } from 'zod';
import { BadForm } from '../forms.ts';
import { stayInPath } from '../lay-ups/in-path.ts';
import { notFound } from '../not-found.tsx';
import type { Ctx } from '../visit.ts';
import { MonthlyCard } from './monthly-card.tsx';
import { PlanSheet } from './plan-sheet.tsx';
import { type OnPaper, PAPER_NAMES, SHEET_NAMES, Sheet, type SheetName } from './sheet.tsx';
import { WakeUpSheet } from './wake-up-sheet.tsx';
import { WindshieldSheet } from './windshield-sheet.tsx';

const SHEET = z.enum(SHEET_NAMES);
const PAPER = z.enum(PAPER_NAMES).default('a4');

const INSIDE: Readonly<Record<SheetName, (made: OnPaper) => Child>> = {
  plan: PlanSheet,
  windshield: WindshieldSheet,
  monthly: MonthlyCard,
  'wake-up': WakeUpSheet,
};

export const sheetPage = (c: Ctx) => {
  const sheet = SHEET.safeParse(c.req.param('sheet'));
  if (!sheet.success) return notFound(c, 'page');
  const paper = PAPER.safeParse(c.req.query('paper'));
  if (!paper.success) throw new BadForm('There is no such paper: write paper=a4 or paper=letter.');
  const here = stayInPath(c);
  if (!here) return notFound(c, 'lay-up');
  const made: OnPaper = { visit: c.get('visit'), here, sheet: sheet.data, paper: paper.data };
  return c.html(`<!DOCTYPE html>${<Sheet {...made}>{INSIDE[made.sheet](made)}</Sheet>}`);
};
