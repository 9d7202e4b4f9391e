// The service, as functions. Errors are what the service said, in words.

const AWAY = ['storage/in-use', 'storage/unreachable'];

export class Refused extends Error {
  constructor(status, body) {
    super(body.detail ?? `The service answered ${status}.`);
    this.status = status;
    this.code = body.code ?? '';
  }
}

export const isStorageAway = body => AWAY.includes(body.code);

/** A refusal; that the storage is away concerns the whole page, which is told by an event. */
export function refused(status, body) {
  if (isStorageAway(body)) dispatchEvent(new Event('storage-away'));
  return new Refused(status, body);
}

export export async function call(method, path, body) {
  const init = {method, headers: {Accept: 'application/json'}};
  if (body instanceof FormData) init.body = body;
  else if (body !== undefined) {
    init.body = JSON.stringify(body);
    init.headers['Content-Type'] = 'application/json';
  }
  let answer;
  try {
    answer = await fetch(path, init);
  } catch {
    throw new Refused(0, {code: 'unreachable', detail: 'The service does not answer. Is it still running?'});
  }
  if (answer.status === 204) return null;
  const json = await answer.json().catch(() => ({}));
  if (!answer.ok) throw refused(answer.status, json);
  return json;
}

export const a = id => '/api/analyses/' + encodeURIComponent(id);

export const start = () => call('GET', '/api/start');
/** What the service says of itself, also where it says that it can't do its work. */
export const health = () =>
  fetch('/api/health', {headers: {Accept: 'application/json'}, cache: 'no-store'}).then(r => r.json());
export const openSession = token => call('POST', '/api/session', {token});
export const samples = () => call('GET', '/api/samples').then(r => r.samples);
export const openSample = name => call('POST', `/api/samples/${encodeURIComponent(name)}/analyses`);
export const analyses = () => call('GET', '/api/analyses?limit=200').then(r => r.analyses);
export const analysis = id => call('GET', a(id));
export const outline = id => call('GET', a(id) + '/outline');
export const surroundings = id => call('GET', a(id) + '/surroundings');
export const junction = (id, junction) => call('GET', `${a(id)}/junctions/${encodeURIComponent(junction)}`);
export const sectionAt = (id, junction) => `${a(id)}/sections/${encodeURIComponent(junction)}.svg`;
/** All sheets of the plan, to print. @param {string} units metric or us */
export const planAt = (id, units) => `${a(id)}/plan.html?units=${units}`;
/** All sheets as PDF. @param {string} units metric or us */
export const submittalAt = (id, units) => `${a(id)}/submittal.pdf?units=${units}${units === 'us' ? '&paper=tabloid' : ''}`;
/** A sheet of the trims as they are folded. @param {string} units metric or us */
export const profilesAt = (id, units) => `${a(id)}/profiles.svg?units=${units}`;
/** @param {string} units metric or us */
export const workbookAt = (id, units) => `${a(id)}/workbook.xlsx?units=${units}`;
/** The copy of one of its models, counted from 1, with the answers in it. */
export const copyAt = (id, model) => `${a(id)}/copies/${model}`;
/** @param {File} file BCF that came back */
export async function takeTopics(id, file) {
  const answer = await fetch(a(id) + '/topics',
    {method: 'POST', body: file, headers: {'Content-Type': 'application/octet-stream', Accept: 'application/json'}});
  const body = await answer.json().catch(() => ({}));
  if (!answer.ok) throw refused(answer.status, body);
  return body;
}
export const fileAt = (id, file) => `${a(id)}/${file}`;
export const cutsAt = id => a(id) + '/cuts.csv';
/** The cut list as rows of cells. */
export async function cuts(id) {
  const answer = await fetch(cutsAt(id));
  if (!answer.ok) throw new Error('The cut list cannot be had now.');
  return (await answer.text()).trim().split('\r\n').map(cells);
}

/** The rows of a table, cells by their heads. */
async function table(at, what) {
  const answer = await fetch(at);
  if (!answer.ok) throw new Error(`${what} cannot be had now.`);
  const [heads, ...rows] = (await answer.text()).trim().split('\r\n').map(cells);
  return rows.map(r => Object.fromEntries(heads.map((head, i) => [head, r[i]])));
}

export const orderAt = id => a(id) + '/order.csv';
/** The lines of the order's table by their ids. */
export const orderRows = id => table(orderAt(id), 'The order').then(rows => new Map(rows.map(r => [r.id, r])));

export const subtotalsAt = (id, by) => `${a(id)}/subtotals.csv?by=${by}`;
export const subtotals = (id, by) => table(subtotalsAt(id, by), 'The subtotals');

export const junctionsAt = id => a(id) + '/junctions.csv';
export const pricesAt = project => `/api/projects/${encodeURIComponent(project)}/prices`;
export const removePrices = project => call('DELETE', pricesAt(project));
/** @param {File} file comma-separated values */
export async function putPrices(project, file) {
  const answer = await fetch(`${pricesAt(project)}?name=${encodeURIComponent(file.name)}`,
    {method: 'PUT', body: file, headers: {'Content-Type': 'text/csv', Accept: 'application/json'}});
  if (!answer.ok) throw refused(answer.status, await answer.json().catch(() => ({})));
}

const cells = line => line.match(/("([^"]|"")*"|[^,]*)(,|$)/g)
  .map(c => c.replace(/,$/, '').replace(/^"|"$/g, '').replaceAll('""', '"'));

export const reportAt = id => a(id) + '/report.txt';
/** Where the order of work is had. @param {Object<string, string>} query crew, weather by hand, format */
export const sequenceAt = (id, query) =>
  `${a(id)}/sequence?${new URLSearchParams(Object.entries(query).filter(([, v]) => v))}`;
/** The order of work, in the weather of a file or of the query. @param {'json'|'blob'} as */
export async function sequence(id, query, file, as = 'json') {
  if (!file) return call('GET', sequenceAt(id, query));
  const answer = await fetch(sequenceAt(id, {name: file.name, crew: query.crew, from: query.from, format: query.format}),
    {method: 'POST', body: file, headers: {'Content-Type': 'text/csv'}});
  if (!answer.ok) throw refused(answer.status, await answer.json().catch(() => ({})));
  return answer[as]();
}
/** How the work on the roof stands. */
export const reviews = id => call('GET', a(id) + '/reviews');
export const cancel = id => call('DELETE', a(id));
export const remove = id => call('DELETE', a(id) + '?remove=true');
export const decisionsAt = id => a(id) + '/decisions';
export const putReview = (id, junction, review) => call('PUT', `${a(id)}/reviews/${encodeURIComponent(junction)}`, review);
export const putFinding = (id, finding, mark) => call('PUT', `${a(id)}/findings/${encodeURIComponent(finding)}`, mark);
export const comment = (id, finding, text, author) =>
  call('POST', `${a(id)}/findings/${encodeURIComponent(finding)}/comments`, {text, author});
export const recompute = (id, system) => call('POST', a(id) + '/recompute', {system});
export const place = (id, placements) => call('POST', a(id) + '/place', {placements});
export const project = id => call('GET', '/api/projects/' + encodeURIComponent(id));
export const changes = (from, to) => call('GET', `${a(to)}/changes?from=${encodeURIComponent(from)}`);
export const changesTextAt = (from, to) => `${a(to)}/changes.txt?from=${encodeURIComponent(from)}`;
const served = server => '/api/servers/' + encodeURIComponent(server) + '/projects';
export const servers = () => call('GET', '/api/servers');
export const servedProjects = server => call('GET', served(server)).then(r => r.projects);
export const servedRevisions = (server, project) => call('GET', `${served(server)}/${project}/revisions`).then(r => r.revisions);
export const analyseServed = (server, project, revision) => call('POST', `${served(server)}/${project}/revisions/${revision}/analyses`);
export const turnWatch = (server, project, on) => call('PUT', `${served(server)}/${project}/watch`, {on});
export const watches = () => call('GET', '/api/watches').then(r => r.watches);

/**
 * Sends files and names of revisions on servers, with how much has gone out; fetch cannot tell that.
 * @param {File[]} files
 * @param {File} [system] the roof system
 * @param {string} [project] whose next revision this is
 * @param {(share: number) => void} onSent
 * @param {{server: string, project: number, revision: number}[]} [served]
 * @returns {Promise<{id: string}>}
 */
export function upload(files, system, project, onSent, served = []) {
  const form = new FormData();
  if (project) form.append('project', project);
  for (const f of files) form.append('model', f, f.name);
  for (const s of served) form.append('served', JSON.stringify(s));
  if (system) form.append('system', system, system.name);
  return new Promise((resolve, reject) => {
    const x = new XMLHttpRequest();
    x.open('POST', '/api/analyses');
    x.responseType = 'json';
    x.upload.onprogress = e => e.lengthComputable && onSent(e.loaded / e.total);
    x.onload = () => x.status === 202 ? resolve(x.response) : reject(refused(x.status, x.response ?? {}));
    x.onerror = () => reject(new Refused(0,
      {code: 'unreachable', detail: 'The upload was cut off: the service refused it or does not answer.'}));
    x.send(form);
  });
}

/**
 * Follows an analysis to its end.
 * @param {(progress: {stage: string, fraction: number}) => void} onProgress
 * @returns {{end: Promise<{state: string}>, stop: () => void}} the last event, and a way to stop listening
 */
export function follow(id, onProgress) {
  const source = new EventSource(a(id) + '/events');
  const end = new Promise(resolve => {
    source.addEventListener('progress', e => onProgress(JSON.parse(e.data)));
    source.addEventListener('end', e => { source.close(); resolve(JSON.parse(e.data)); });
    source.onerror = async () => {
      const now = await analysis(id).catch(() => null);
      if (now && ['done', 'failed', 'cancelled'].includes(now.state)) {
        source.close();
        resolve({state: now.state});
      }
    };
  });
  return {end, stop: () => source.close()};
}
