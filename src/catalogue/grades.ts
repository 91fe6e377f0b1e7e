/** How much weight a source carries, told by kind of text. */
export const GRADES = {
  regulation: 'Law or regulation',
  standard: 'Published standard',
  handbook: 'Engineering handbook or textbook formula',
  paper: 'Research paper or report',
  authority: 'Agency, inspection body, vehicle or part maker’s text',
  trade: 'Trade press, specialist workshop, magazine',
  owners: 'Club, forum, owners',
  explainer: 'General explainer page',
  practice: 'Common practice',
  memory: 'From memory',
} as const;
type Grade = keyof typeof GRADES;

export interface Source {
  grade: Grade;
  title: string;
}
