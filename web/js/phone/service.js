// The service, as the page on the roof asks it: with its link, where it has one.

export class Refused extends Error {
  constructor(status, body) {
    super(body.detail ?? `The service answered ${status}.`);
    this.status = status;
    this.code = body.code ?? '';
  }
}

/** Nothing came back: there is no connection, or the service is down. */
export const isAway = e => e instanceof Refused && e.status === 0;

async function ask(roof, method, path, body, type) {
  const headers = {};
  if (roof.token) headers.Authorization = `Bearer ${roof.token}`;
  if (type) headers['Content-Type'] = type;
  let answer;
  try {
    answer = await fetch(path, {method, headers, body, cache: 'no-cache', signal: AbortSignal.timeout(60_000)});
  } catch {
    throw new Refused(0, {detail: 'No connection.'});
  }
  if (!answer.ok) throw new Refused(answer.status, await answer.json().catch(() => ({})));
  return answer;
}

const a = id => '/api/analyses/' + encodeURIComponent(id);
const json = (roof, path) => ask(roof, 'GET', path).then(r => r.json());

export const link = roof => json(roof, '/api/link');
export const sheet = (roof, id) => json(roof, a(id) + '/roof');
/** The plan of days of the order of work: for each day its tasks and what is carried up. */
export const days = (roof, id) => json(roof, a(id) + '/sequence').then(({steps, days: all}) => {
  const byId = new Map(steps.map(s => [s.id, s]));
  return all.map(d => ({carryUp: d.carryUp, tasks: d.tasks.map(t => {
    const {place, label, does} = byId.get(t.step);
    return {place, label, does, ends: t.ends};
  })}));
});
export const record = (roof, id) => json(roof, a(id) + '/record');
export const section = (roof, id, place) => ask(roof, 'GET', `${a(id)}/sections/${encodeURIComponent(place)}.svg`).then(r => r.text());
export const photo = (roof, id, sha) => ask(roof, 'GET', `${a(id)}/record/photos/${sha}`).then(r => r.blob());
export const file = (roof, id, name) => ask(roof, 'GET', `${a(id)}/${name}`).then(r => r.blob());

/** Sends one event; one that is there already is no other. @returns {Promise<{seq: number}>} */
export const putEvent = (roof, id, {id: event, ...body}) =>
  ask(roof, 'PUT', `${a(id)}/record/events/${event}`, JSON.stringify(body), 'application/json').then(r => r.json());
export const putPhoto = (roof, id, event, blob, withPlace) =>
  ask(roof, 'PUT', `${a(id)}/record/photos/${event}${withPlace ? '?location=keep' : ''}`, blob, blob.type || 'application/octet-stream');
