/** What a camera reads off the code drawn on a sheet. */
import jsQR from 'jsqr';

export const decoded = (html: string): string | undefined => {
  const [, across = '', path = ''] =
    /<div class="code">.*?viewBox="0 0 (\d+) \1".*?<path d="([^"]*)" fill="#000"/s.exec(html) ?? [];
  const [modules, scale] = [Number(across), 6];
  const width = modules * scale;
  const pixels = new Uint8ClampedArray(width * width * 4).fill(255);
  for (const [, x, y, length] of path.matchAll(/M(\d+) (\d+)h(\d+)v1H\1z/g))
    for (let row = Number(y) * scale; row < (Number(y) + 1) * scale; row++)
      for (let column = Number(x) * scale; column < (Number(x) + Number(length)) * scale; column++)
        pixels.fill(0, (row * width + column) * 4, (row * width + column) * 4 + 3);
  return jsQR.default(pixels, width, width)?.data;
};
