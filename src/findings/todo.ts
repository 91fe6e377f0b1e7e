/** What to do about a finding, and what would make it surer. */
import { addDays } from '../dates/civil.ts';
import { count, dayInWords } from '../dates/words.ts';
import type { Finding } from './assess.ts';
import { gaugesOf, type Measured } from './measured.ts';
import { askedOf, surestGauges } from './outlook.ts';
import { bandWords, capital } from './reading-words.ts';
import type { Turn } from './turns.ts';

/** The turn that age has brought by that day, or null: then the same standing came by distance. */
export const comeByAge = ({ standing, kind, past, due, on }: Finding): Turn | null => {
  if (standing === 'due') return due?.worst && due.worst <= on ? due : null;
  const day = kind.severity === 'safety' ? (past?.worst ?? past?.best) : past?.best;
  return day && day <= on ? past : null;
};

/** A gauge read this lately needs no second reading to make the estimate surer, in days; from memory. */
const JUST_READ = 30;

export const surerOf = ({ kind, measured, on }: Finding): string | null => {
  const wanted = surestGauges(kind);
  const gauges = gaugesOf(kind).filter(({ gauge }) => wanted?.includes(gauge.key) ?? true);
  const fresh = measured.some(
    ({ test, reading, verdict }) => gauges.includes(test) && verdict !== null && addDays(reading.day, JUST_READ) >= on,
  );
  const [best] = wanted
    ? gauges.sort((a, b) => wanted.indexOf(a.gauge.key) - wanted.indexOf(b.gauge.key))
    : gauges.sort((a, b) => a.gauge.minutes - b.gauge.minutes);
  if (fresh) return null;
  if (best) return `Measure it: ${best.name.toLowerCase()}, ${count(best.gauge.minutes, 'minute')}. ${best.how}`;
  const [test] = kind.tests;
  return test && gaugesOf(kind).length === 0 ? `Test it: ${test.name.toLowerCase()}. ${test.how}` : null;
};

/** What a reading asks first; else what an estimate does, unless the calendar asks for more; then the calendar. */
export const todoOf = (finding: Finding): string => {
  const { by, gravest, news, kind, standing } = finding;
  const byEstimate = news.estimate && !gravest && standing !== 'due' && standing !== 'past' ? askedOf(kind) : null;
  const asked = [
    gravest ? `${asksInWords(gravest)}.` : null,
    byEstimate && `${capital(byEstimate)}.`,
    by === 'age' || by === 'distance' ? todoByAge(finding) : null,
  ].filter((text) => text !== null);
  return asked.length > 0 ? asked.join(' ') : todoByAge(finding);
};

const asksInWords = (gravest: Measured): string =>
  gravest.verdict === 'act'
    ? `${gravest.test.name}: ${bandWords(gravest)}`
    : `${gravest.test.name} wants watching (${bandWords(gravest)}): read it again within a month`;

const todoByAge = (finding: Finding): string => {
  const { standing, kind, past, since } = finding;
  const test = kind.tests[0];
  const how = test ? `${test.name}: ${test.how}` : kind.findDate;
  switch (standing) {
    case 'unproven':
      return since === null || since.from === null
        ? `Find its date. ${kind.findDate}`
        : `Date it better, or treat it as past. ${kind.findDate}`;
    case 'past':
      return `Renew it. If ignored: ${kind.ignored}`;
    case 'due':
      // Its last day is the one before it turns past.
      return `${kind.whenDue ?? 'Order and book it now'}${past?.worst && comeByAge(finding) ? `, to be done by ${dayInWords(addDays(past.worst, -1))}` : ''}.`;
    case 'look':
      return `Look and test. ${how}`;
    case 'in date':
      return 'Nothing now.';
  }
};
