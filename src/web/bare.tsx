/** A page for somebody who is let in by a link alone: no menu, no collection, found by no search engine. */
import type { Child } from 'hono/jsx';
import type { Ctx } from './visit.ts';

export const barePage = (c: Ctx, title: string, body: Child, status: 200 | 404 | 422 = 200) =>
  c.html(
    `<!DOCTYPE html>${(
      <html lang="en">
        <head>
          <meta charset="utf-8" />
          <meta name="viewport" content="width=device-width, initial-scale=1" />
          <meta name="robots" content="noindex" />
          <title>{`${title} · Standstill`}</title>
          <link rel="icon" type="image/svg+xml" href={`${c.get('around').site.base}/static/icon.svg`} />
          <link rel="stylesheet" href={`${c.get('around').site.base}/static/style.css`} />
        </head>
        <body>
          <main id="main">{body}</main>
        </body>
      </html>
    )}`,
    status,
  );

/** Of a link that leads nowhere: unknown, ended and past ones are told apart for nobody. */
export const linkEnded = (c: Ctx, what: string) =>
  barePage(
    c,
    'This link has ended',
    <>
      <h1>This link has ended, or never was</h1>
      <p>{what}</p>
    </>,
    404,
  );
