// Says how a date is understood while it is typed. Everything works without this script.
const base = document.body.dataset.base ?? '';
const on = new URLSearchParams(location.search).get('on');

const DATE_WORDS =
  /\/|\b(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec|about|circa|before|after|between|since|until|early|mid|late|original|unknown|not|today|yesterday)/i;

const ask = async (text, reads) => {
  const query = new URLSearchParams(on ? { on } : {});
  // A tire's field takes its code or a date; only dates have such words, or a slash.
  const tire = reads === 'tire code' && !DATE_WORDS.test(text);
  if (reads === 'ahead') query.set('ahead', '1');
  query.set(tire ? 'code' : 'text', text);
  const answer = await fetch(`${base}/api/v1/${tire ? 'date-codes/tire' : 'dates/read'}?${query}`);
  const said = await answer.json();
  if (!answer.ok) return said.detail ?? '';
  return tire
    ? said.candidates.map(({ week, year }) => `week ${week} of ${year}`).join(' or ')
    : `Understood: ${said.understood}`;
};

for (const input of document.querySelectorAll('input[data-reads]')) {
  const line = document.createElement('p');
  line.className = 'understands';
  line.setAttribute('aria-live', 'polite');
  input.closest('label').after(line);
  let waiting;
  input.addEventListener('input', () => {
    clearTimeout(waiting);
    waiting = setTimeout(async () => {
      const text = input.value.trim();
      const words = text.length > 2 ? await ask(text, input.dataset.reads).catch(() => '') : '';
      if (input.value.trim() === text) line.textContent = words;
    }, 350);
  });
}
