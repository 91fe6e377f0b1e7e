import { createRoute, z } from '@hono/zod-openapi';
import type { CivilDate } from '../../dates/civil.ts';
import { explainTireCode } from '../../dates/tire-code/explain.ts';
import { readTireCode } from '../../dates/tire-code/read.ts';
import { readTypedDate } from '../../dates/typed-date.ts';
import { problem } from './problem.ts';
import { type Api, json, refusal } from './route.ts';
import { OnQuery } from './schemas/base.ts';
import { TireCodeOut, TireCodeQuery } from './schemas/dates.ts';

const tire = createRoute({
  method: 'get',
  path: '/date-codes/tire',
  summary: 'Read a tire date code by 49 CFR 574.5',
  request: { query: TireCodeQuery },
  responses: {
    200: json(TireCodeOut, 'Every week the code can stand for'),
    422: refusal('What was wrong, and what to look at'),
  },
});

const typed = createRoute({
  method: 'get',
  path: '/dates/read',
  summary: 'Read a date as people write it',
  request: { query: OnQuery.extend({ text: z.string().max(200) }) },
  responses: {
    200: json(
      z.object({
        said: z.string(),
        understood: z.string(),
        edtf: z.string().nullable(),
        from: z.string().nullable(),
        to: z.string().nullable(),
      }),
      'How it is understood',
    ),
    422: refusal('What was wrong, and what to look at'),
  },
});

export const dateRoutes = (app: Api): void => {
  app.openapi(tire, (c) => {
    const { code, ninetiesMark, notBefore, fittedBy } = c.req.valid('query');
    const { on } = c.get('visit');
    const known = {
      ninetiesMark,
      notBefore: notBefore as CivilDate | undefined,
      fittedBy: fittedBy as CivilDate | undefined,
    };
    const answer = readTireCode(code, on, known);
    const words = explainTireCode(answer, on);
    if (!answer.ok) {
      const { ok, reason, ...about } = answer;
      const detail = [...words.working, ...words.next].join(' ');
      return problem(c, {
        ...about,
        status: 422,
        title: words.title,
        detail,
        code: reason,
        errors: [{ pointer: '#/code', detail: detail || words.title }],
      }) as never;
    }
    const { candidates, warnings, dateCode, form, dropped } = answer;
    const { working, doubts, next } = words;
    return c.json({ candidates, warnings, dateCode, form, dropped, working, doubts, next }, 200);
  });

  app.openapi(typed, (c) => {
    const { text } = c.req.valid('query');
    const { on, person } = c.get('visit');
    const read = readTypedDate(text, { today: on, order: person.dateOrder, mayBeAhead: c.req.query('ahead') === '1' });
    if (!read.ok) {
      const error = {
        pointer: '#/text',
        detail: read.message,
        ...(read.reason === 'ambiguous' ? { choices: read.choices } : {}),
      };
      return problem(c, {
        status: 422,
        title: 'Not one date',
        detail: read.message,
        code: read.reason.replace(' ', '-'),
        errors: [error],
      }) as never;
    }
    if (read.said !== 'date')
      return c.json({ said: read.said, understood: read.said, edtf: null, from: null, to: null }, 200);
    const { edtf, from, to } = read.date;
    return c.json({ said: read.said, understood: read.understood, edtf, from, to }, 200);
  });
};
