import { describe, expect, it } from 'vitest';
import { addDays, type CivilDate } from '../../src/dates/civil.ts';
import type { MarkAnswer } from '../../src/dates/marks/answer.ts';
import { readExtinguisherStamp } from '../../src/dates/marks/extinguisher-stamp.ts';
import { readHarnessLabel } from '../../src/dates/marks/harness-label.ts';
import { readHoseLabel } from '../../src/dates/marks/hose-label.ts';
import published from './mark-vectors.json' with { type: 'json' };

interface Vector {
  id: string;
  kind: string;
  rule: string;
  source: string;
}
interface HoseDate extends Vector {
  input: string;
  asOf: CivilDate;
  expect: { from: CivilDate; to: CivilDate };
}
interface HoseError extends Vector {
  input: string;
  asOf: CivilDate;
  expect: { error: string };
}
interface Harness extends Vector {
  standard: string;
  made: CivilDate;
  expect: { validThrough: CivilDate };
}
interface Extinguisher extends Vector {
  made: CivilDate;
  expect: { removeFromService: CivilDate };
}

const ofKind = <T extends Vector>(kind: string): T[] =>
  (published as Vector[]).filter((vector) => vector.kind === kind) as T[];

const candidates = (answer: MarkAnswer) => {
  if (!answer.ok) throw new Error(`refused: ${answer.reason}`);
  return answer.candidates;
};

describe('brake hose labels', () => {
  it.each(ofKind<HoseDate>('hose-date'))('$id $input: $rule ($source)', ({ input, asOf, expect: { from, to } }) => {
    expect(candidates(readHoseLabel(input, asOf))).toEqual([{ from, to }]);
  });

  it.each(ofKind<HoseError>('hose-date-error'))('$id $input: $rule ($source)', ({ input, asOf, expect: { error } }) => {
    expect(readHoseLabel(input, asOf)).toMatchObject({ ok: false, reason: error });
  });

  it('49 CFR 571.106 S5.2.2(c), its own example: 10/1/74 is October 1, 1974', () => {
    expect(candidates(readHoseLabel('10/1/74', '2026-11-25'))).toEqual([{ from: '1974-10-01', to: '1974-10-01' }]);
  });
});

describe('harness labels', () => {
  it.each(ofKind<Harness>('harness-expiry'))('$id $standard made $made: $rule ($source)', (vector) => {
    const { standard, made, expect: wanted } = vector;
    const [only, ...others] = candidates(readHarnessLabel(`${standard} made ${made}`, '2026-11-25'));
    expect(others).toEqual([]);
    expect(only).toMatchObject({ from: made, to: made, validThrough: wanted.validThrough });
  });

  it('FIA 8853/98, technical bulletin: made January 2015 is valid to 31 December 2020', () => {
    expect(candidates(readHarnessLabel('1/2015', '2026-11-25', 'international'))).toEqual([
      { from: '2015-01-01', to: '2015-01-31', validThrough: '2020-12-31' },
    ]);
  });
});

describe('extinguisher stamps', () => {
  it.each(ofKind<Extinguisher>('extinguisher'))('$id made $made: $rule ($source)', ({ made, expect: wanted }) => {
    const [only] = candidates(readExtinguisherStamp(made, '2026-11-25', 'disposable'));
    expect(addDays(only?.validThrough as CivilDate, 1)).toBe(wanted.removeFromService);
  });
});
