/** The square code that leads from the paper back to its page, with the address in letters below it. */
import { encode } from 'uqr';

/** White around the code, in modules: readers ask for four. */
const QUIET = 4;

export const Code = ({ address }: { address: string }) => {
  const { size, data } = encode(address, { ecc: 'M', border: 0 });
  const whole = size + 2 * QUIET;
  return (
    <div class="code">
      <svg
        viewBox={`0 0 ${whole} ${whole}`}
        role="img"
        aria-label="Square code with the address below"
        shape-rendering="crispEdges"
      >
        <rect width={whole} height={whole} fill="#fff" />
        <path d={modulesOf(data)} fill="#000" />
      </svg>
      <p class="address">{address}</p>
      {isHereOnly(address) && <p class="address">This code works on this machine only.</p>}
    </div>
  );
};

/** Dark modules, each run along a row as one bar. */
const modulesOf = (data: readonly (readonly boolean[])[]): string =>
  data
    .flatMap((row, y) =>
      row.flatMap((dark, x) => {
        if (!dark || row[x - 1]) return [];
        const end = row.indexOf(false, x);
        return [`M${x + QUIET} ${y + QUIET}h${(end < 0 ? row.length : end) - x}v1H${x + QUIET}z`];
      }),
    )
    .join('');

/** Addresses that mean another machine wherever they are read. */
const isHereOnly = (address: string): boolean =>
  /^(localhost|.*\.localhost|127\.[\d.]+|0\.0\.0\.0|\[::1?\])$/.test(new URL(address).hostname);
