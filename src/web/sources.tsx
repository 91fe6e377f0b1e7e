import { GRADES } from '../catalogue/grades.ts';
import { SOURCES, type SourceKey } from '../catalogue/sources.ts';

/** Where a figure comes from, with the grade said plainly. */
export const Sources = ({ keys }: { keys: readonly SourceKey[] }) =>
  keys.length === 0 ? null : (
    <ul class="sources">
      {keys.map((key) => (
        <li>
          {SOURCES[key].title} <span class="grade">({GRADES[SOURCES[key].grade].toLowerCase()})</span>
        </li>
      ))}
    </ul>
  );
