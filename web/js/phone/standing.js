// How each place stands: what the service said, and over it what this telephone has said since.

const ANSWER = {tick: 'ticked', untick: 'open', failure: 'failed', deviation: 'deviates'};

/**
 * One place as it stands here and now.
 * @param {object} place of the sheet, with its items
 * @param {object} record as the service gave it last, or null
 * @param {object[]} own entries of the queue about this roof, in their order
 */
export function standing(place, record, own) {
  const there = record?.places.find(p => p.id === place.id);
  const mine = own.filter(e => e.event.place === place.id && e.state !== 'refused');
  const items = place.items.map(i => itemStanding(i, there, mine));
  const ticked = new Set(items.filter(i => i.standing === 'ticked').map(i => i.id));
  for (const i of items) i.locked = i.needs.some(id => !ticked.has(id));
  return {place, items, stage: stage(there, mine, items), signed: there?.signed ?? null, waits: mine.length,
    events: [...(there?.events ?? []), ...mine.filter(e => !(there?.events ?? []).some(x => x.id === e.event.id))
      .map(e => ({...e.event, seq: 0, received: '', photo: '', blob: e.photo}))]};
}

function itemStanding(item, there, mine) {
  const said = there?.items.find(i => i.id === item.id), last = mine.filter(e => e.event.point === item.id).at(-1);
  const answers = (said?.answers ?? []).map(id => there.events.find(e => e.id === id)).filter(Boolean);
  return {...item, standing: last ? ANSWER[last.event.kind] ?? said?.standing ?? 'open' : said?.standing ?? 'open',
    answers: last ? [{...last.event, waits: last.state === 'waiting'}] : answers};
}

function stage(there, mine, items) {
  if (!mine.length) return there?.stage ?? 'open';
  const last = mine.filter(e => ['sign-off', 'withdrawal'].includes(e.event.kind)).at(-1);
  if (items.some(i => i.standing === 'conflict')) return 'conflict';
  if (items.some(i => i.standing === 'failed')) return 'failed';
  if (last?.event.kind === 'sign-off') return 'signed';
  const answered = mine.some(e => ANSWER[e.event.kind] && e.event.point);
  if (there?.signed && !last) return answered ? 'recheck' : there.stage;
  const settled = i => i.standing === 'ticked' || i.standing === 'deviates', points = items.filter(i => !i.isStep);
  return points.length && points.every(settled) ? 'checked' : items.some(settled) ? 'begun' : 'open';
}

/** Length of all lines, and of those that are looked at and signed off, metres; what is open and disagreed. */
export function coverage(standings) {
  const sum = {lengthM: 0, checkedM: 0, signedM: 0, open: 0, conflicts: 0};
  for (const s of standings) {
    const m = s.place.lengthM ?? 0;
    sum.lengthM += m;
    if (s.stage === 'signed') sum.signedM += m;
    if (s.stage === 'signed' || s.stage === 'checked') sum.checkedM += m;
    if (s.stage === 'conflict') sum.conflicts++;
    sum.open += s.items.filter(i => !i.isStep && !['ticked', 'deviates'].includes(i.standing)).length;
  }
  return sum;
}
