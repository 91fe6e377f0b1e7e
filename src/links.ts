/** Where the site lives: paths below a base, and absolute addresses for letters. */
export interface Site {
  /** Path the site lives under, without a slash at the end: '' or '/cars'. */
  base: string;
  /** Address of a page for people elsewhere. */
  href(path: string): string;
}

export const siteAt = (baseUrl: URL | null, port: number): Site => {
  const url = baseUrl ?? new URL(`http://localhost:${port}`);
  const base = url.pathname.replace(/\/+$/, '');
  return { base, href: (path) => `${url.origin}${base}${path}` };
};
