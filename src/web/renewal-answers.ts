const ANSWER = /^answer\.([^.]+)\.([^.]+)$/;

/** Answers about what is renewed come as answer.<part>.<key>, their units as unit.<part>.<key>. */
export const answersIn = (
  form: Readonly<Record<string, unknown>>,
): Record<string, Record<string, { typed: string; unit: string }>> => {
  const answers: Record<string, Record<string, { typed: string; unit: string }>> = {};
  for (const [name, typed] of Object.entries(form)) {
    const [, part, key] = ANSWER.exec(name) ?? [];
    if (!part || !key || typeof typed !== 'string' || typed === '') continue;
    const unit = form[`unit.${part}.${key}`];
    answers[part] = { ...answers[part], [key]: { typed, unit: typeof unit === 'string' ? unit : '' } };
  }
  return answers;
};
