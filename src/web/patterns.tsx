/** The fills that tell standings apart in black and white, and the band of a rule; drawn once a page, used by name. */
export const Patterns = () => (
  <svg class="patterns" width="0" height="0" aria-hidden="true">
    <defs>
      <pattern id="unproven" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <rect width="6" height="6" class="paper" />
        <rect width="2.5" height="6" class="ink" />
      </pattern>
      <pattern id="due" width="6" height="6" patternUnits="userSpaceOnUse">
        <rect width="6" height="6" class="paper" />
        <rect width="6" height="3" class="ink" />
      </pattern>
      <pattern id="look" width="6" height="6" patternUnits="userSpaceOnUse">
        <rect width="6" height="6" class="paper" />
        <circle cx="3" cy="3" r="1.1" class="ink" />
      </pattern>
      <pattern id="band" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <rect width="1.4" height="5" class="ink" />
      </pattern>
    </defs>
  </svg>
);
