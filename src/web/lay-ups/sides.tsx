/** Where the trade disagrees: what each side says, what speaks for it, and the owner’s choice, which can be taken back. */
import type { StayHere } from '../../acts/stays.ts';
import { TOPICS, type TopicKey } from '../../plans/topics.ts';
import { sideOf, usualSide } from '../../plans/when.ts';
import { A, Post, page, useVisit } from '../layout.tsx';
import { notFound } from '../not-found.tsx';
import { Sources } from '../sources.tsx';
import type { Ctx } from '../visit.ts';
import { stayInPath } from './in-path.ts';
import { isClosed } from './words.ts';

export const sidesPage = (c: Ctx) => {
  const here = stayInPath(c);
  return here ? page(c, 'Where the trade disagrees', <Sides here={here} />) : notFound(c, 'lay-up');
};

const Sides = ({ here: { record, found, view } }: { here: StayHere }) => {
  const { on } = useVisit();
  const { row } = record;
  const keys = (Object.keys(TOPICS) as TopicKey[]).filter(
    (key) => key !== 'silicone' || view.situation.traits.has('silicone-fluid'),
  );
  return (
    <>
      <p class="crumb">
        <A to={`/lay-ups/${row.id}`}>Lay-up of {found.car.name}</A>
      </p>
      <h1>Where the trade disagrees</h1>
      <p class="lede">
        Each has a usual side for this car, place and length of stay. Take the other and the plan follows; it stays with
        this lay-up, and with the next one that begins like it.
      </p>
      {keys.map((key) => (
        <BothSides
          layUpId={row.id}
          topic={key}
          side={sideOf(key, view.situation)}
          usual={usualSide(key, view.situation)}
          chosen={row.choices[key] !== undefined}
          back="sides"
          closed={isClosed(row, on)}
        />
      ))}
    </>
  );
};

export const BothSides = ({
  layUpId,
  topic: key,
  side,
  usual,
  chosen = false,
  back,
  closed,
}: {
  layUpId: string;
  topic: TopicKey;
  side: string | null;
  /** Where it is told which side is usual here, it can be gone back to. */
  usual?: string;
  chosen?: boolean;
  back: 'lay-up' | 'wake-up' | 'sides';
  closed: boolean;
}) => {
  const topic = TOPICS[key];
  const sides: [string, { name: string; says: string }][] = Object.entries(topic.sides);
  return (
    <Post to={`/lay-ups/${layUpId}/sides`} class="sides">
      <fieldset class="choices">
        <legend>{topic.name}</legend>
        <input type="hidden" name="topic" value={key} />
        <input type="hidden" name="back" value={back} />
        {sides.map(([one, { name, says }]) => (
          <label>
            <input type="radio" name="side" value={one} checked={one === side && (usual === undefined || chosen)} />{' '}
            <span>
              <strong>{name}.</strong> {says}
            </span>
          </label>
        ))}
        {usual !== undefined && (
          <label>
            <input type="radio" name="side" value="" checked={!chosen} />{' '}
            <span>
              <strong>The usual one here:</strong> {sides.find(([one]) => one === usual)?.[1].name.toLowerCase()}
            </span>
          </label>
        )}
        <p class="hint">{topic.evidence}</p>
        <Sources keys={topic.sources} />
        {!closed && <button class="quiet">Take this side</button>}
      </fieldset>
    </Post>
  );
};
