/** Looks into our own pages, whose attributes all stand in double quotes. */
export type Attributes = Record<string, string>;

const SIGNS: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };
const decoded = (text: string): string =>
  text.replace(/&(amp|lt|gt|quot|#39);/g, (_, name: string) => SIGNS[name] ?? '');

/** The attributes of every tag of a name, in the order of the page. */
export const tags = (html: string, name: string): Attributes[] =>
  [...html.matchAll(new RegExp(`<${name}((?:\\s+[\\w-]+="[^"]*")*)\\s*/?>`, 'g'))].map((found) =>
    Object.fromEntries(
      [...(found[1] ?? '').matchAll(/([\w-]+)="([^"]*)"/g)].map(([, key, value]) => [key, decoded(value ?? '')]),
    ),
  );

/** Tags that stand within a line of text. */
const INLINE = /<\/?(?:a|b|code|em|i|q|small|span|strong|time)\b[^>]*>/g;

/** What a reader sees: no tags, single blanks. */
export const text = (html: string): string =>
  decoded(
    html
      .replace(/<(script|style|svg)\b.*?<\/\1>/gs, ' ')
      .replace(INLINE, '')
      .replace(/<[^>]*>/g, ' '),
  )
    .replace(/\s+/g, ' ')
    .trim();

/** The text between the tags of each element of a name; none of the elements asked for nest. */
export const inside = (html: string, name: string): string[] =>
  [...html.matchAll(new RegExp(`<${name}(?:\\s[^>]*)?>(.*?)</${name}>`, 'gs'))].map((found) => text(found[1] ?? ''));

/** The input, select or textarea of a name. */
export const field = (html: string, name: string): Attributes => {
  const all = ['input', 'select', 'textarea'].flatMap((kind) => tags(html, kind)).filter((one) => one['name'] === name);
  // The field that changes the day sends along what was asked, hidden.
  const found = all.find(({ type }) => type !== 'hidden') ?? all[0];
  if (!found) throw new Error(`The page has no field ${name}`);
  return found;
};

/** The values ticked or picked among the boxes or radios of a name. */
export const ticked = (html: string, name: string): string[] =>
  tags(html, 'input')
    .filter((one) => one['name'] === name && 'checked' in one)
    .map((one) => one['value'] ?? 'on');

/** What a field's own fault says, by the ids its `aria-describedby` names; undefined where it has none. */
export const faultAt = (html: string, name: string): string | undefined => {
  const id = field(html, name)
    ['aria-describedby']?.split(' ')
    .find((one) => one.endsWith('-fault'));
  const found = id && new RegExp(`<div class="fault" role="alert" id="${id}">(.*?)</div>`, 's').exec(html);
  return found ? text(found[1] ?? '') : undefined;
};

/** The values offered for a field whose text can mean several things. */
export const choices = (html: string, name: string): string[] =>
  tags(html, 'input')
    .filter((one) => one['name'] === `${name}Choice`)
    .map((one) => one['value'] ?? '');

/** Every address the page links to or posts to, its own parts (`#here`) left out. */
export const addresses = (html: string): string[] =>
  [
    ...['a', 'link'].flatMap((name) => tags(html, name)).map((one) => one['href']),
    ...tags(html, 'form').map((one) => one['action']),
    ...['script', 'img'].flatMap((name) => tags(html, name)).map((one) => one['src']),
  ].filter((address): address is string => address !== undefined && !address.startsWith('#'));

/** What a browser would send for the form that posts to an address, as the page has it filled in; buttons aside. */
export const filledIn = (html: string, action: string): Record<string, string | string[]> => {
  const forms = [...html.matchAll(/<form[^>]*>.*?<\/form>/gs)].map(([whole]) => whole);
  const form = forms.find((one) => tags(one, 'form')[0]?.['action'] === action);
  if (!form) throw new Error(`The page has no form to ${action}`);
  const sent: [string, string][] = [];
  for (const { name, type, value, ...rest } of tags(form, 'input'))
    if (name && (!/^(radio|checkbox)$/.test(type ?? '') || 'checked' in rest))
      sent.push([name, value ?? (type ? 'on' : '')]);
  for (const [, attributes, inner] of form.matchAll(/(<textarea[^>]*>)(.*?)<\/textarea>/gs))
    sent.push([tags(attributes ?? '', 'textarea')[0]?.['name'] ?? '', decoded(inner ?? '')]);
  for (const [, attributes, inner] of form.matchAll(/(<select[^>]*>)(.*?)<\/select>/gs)) {
    const options = tags(inner ?? '', 'option');
    const chosen = options.find((option) => 'selected' in option) ?? options[0];
    sent.push([tags(attributes ?? '', 'select')[0]?.['name'] ?? '', chosen?.['value'] ?? '']);
  }
  const names = Map.groupBy(sent, ([name]) => name);
  return Object.fromEntries(
    [...names].map(([name, all]) => [name, all.length === 1 ? (all[0]?.[1] ?? '') : all.map(([, value]) => value)]),
  );
};
