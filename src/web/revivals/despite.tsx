import type { Fault } from '../../acts/fault.ts';
import type { RevivalStep } from '../../revival/plan.ts';
import { Faults, faultsOf } from '../layout.tsx';
import type { Given } from './in-path.ts';

/** What comes before it can be passed over in writing only. */
export const Despite = ({ step, given, faults }: { step: RevivalStep; given: Given; faults: readonly Fault[] }) =>
  step.waits.length === 0 ? null : (
    <>
      <label>
        Why it is done before what comes first
        <input name="despite" value={String(given['despite'] ?? '')} {...faultsOf(faults, 'despite')} />
      </label>
      <Faults faults={faults} field="despite" />
    </>
  );
