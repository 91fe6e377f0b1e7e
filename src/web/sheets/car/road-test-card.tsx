/** The card for the road tests, and behind it the leak map. */
import type { RevivalHere } from '../../../acts/revivals.ts';
import { CYCLES, LEAK_PLACES, MOMENTS } from '../../../revival/leaks.ts';
import { stepsIn } from '../../../revival/plan.ts';
import { RUNS, SENSES, VERSUS } from '../../../revival/runs.ts';
import { dueInWords } from '../../revivals/plan.tsx';
import { Blank, Box } from '../sheet.tsx';

export const RoadTestCard = ({ here }: { here: RevivalHere }) => (
  <>
    <p>
      <b>Alone in the car, daylight, dry, a phone, somebody who knows the way, a plan for the tow.</b> Each run only
      when the one before ended as planned and nothing got worse.
    </p>
    {Object.values(RUNS).map(({ name, distance, speed, looks, stopIf, afterwards }) => (
      <section class="run-card">
        <h2>
          <Box /> {name}: {distance}. {speed}
        </h2>
        <p>
          Watch: {looks}. <b>Stop if: {stopIf}.</b> After: {afterwards}
        </p>
        <p class="signature">
          <span>
            Day <Blank size="tiny" /> km <Blank size="tiny" /> odometer <Blank />
          </span>
          <span>
            Hubs °C: FL <Blank size="tiny" /> FR <Blank size="tiny" /> RL <Blank size="tiny" /> RR <Blank size="tiny" />
          </span>
          <span>
            <Box /> as planned <Box /> stopped
          </span>
        </p>
      </section>
    ))}
    <h2>Notes: tick, with the run’s letter, and {VERSUS.slice(1).join(', ')} against the last</h2>
    {Object.values(SENSES).map(({ name, kinds }) => (
      <p class="note-grid">
        <b>{name}:</b>
        {kinds.map((kind) => (
          <span>
            <Box /> {kind} <Blank size="tiny" />
          </span>
        ))}
      </p>
    ))}
    <h2 class="page-break">Due after what was driven</h2>
    <ul class="dense">
      {stepsIn(here.plan)
        .filter(({ due }) => due)
        .map(({ way, due }) => (
          <li>
            <Box /> {way.title}
            {due && `: ${dueInWords(due)}`}
          </li>
        ))}
      <li>
        <Box /> Wheel nuts by torque wrench after 80 to 160 km (50 to 100 miles): at <Blank />
      </li>
      <li>
        <Box /> Oil and filter again after 300 to 500 km: at <Blank />
      </li>
    </ul>
    <section>
      <h2>Leak map: I wet, II drops form, III drops fall; any fuel or brake fluid: stop</h2>
      <table>
        <thead>
          <tr>
            <th scope="col">Where</th>
            {CYCLES.flatMap((cycle) =>
              Object.keys(MOMENTS).map((moment) => (
                <th scope="col">
                  {cycle}. {moment}
                </th>
              )),
            )}
          </tr>
        </thead>
        <tbody>
          {Object.values(LEAK_PLACES).map((place) => (
            <tr>
              <th scope="row">{place}</th>
              {CYCLES.flatMap((cycle) => Object.keys(MOMENTS).map((moment) => <td data-at={`${cycle} ${moment}`} />))}
            </tr>
          ))}
        </tbody>
      </table>
      <p>Cold, hot after twenty minutes of soak, next morning: over two heats. Between them nothing may grow.</p>
    </section>
  </>
);
