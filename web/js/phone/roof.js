// The roof that is open: its sheets, its record, what waits to be sent; and who is told when one of them changes.

import * as shelf from './shelf.js';
import * as service from './service.js';
import {coverage, standing} from './standing.js';

export const open = {
  roof: null,       // {key, token, analysis, scope, title}
  sheet: null,      // what is known of the roof itself
  record: null,     // what was said, as the service gave it last
  days: null,       // the work of each day, where it is known
  own: [],          // entries of the queue about this roof
  name: '',         // who holds the telephone
  online: true,     // whether the last request came through
  trouble: '',      // why nothing is sent, where it isn't the connection
};

const listeners = [];
export const onChange = fn => listeners.push(fn);
export const changed = () => listeners.forEach(fn => fn());

export const places = () => [...(open.sheet?.junctions ?? []), ...(open.sheet?.nodes ?? [])];
export const standingOf = place => standing(place, open.record, open.own);
export const standings = () => places().map(standingOf);
export const covered = () => coverage(standings());

/** The place of a tag: the whole id, or its beginning, in whatever the code holds. */
export function byTag(text) {
  const found = /\b[JN][0-9a-z]{8}\b/i.exec(text)?.[0] ?? text.trim();
  const id = found.toLowerCase(), all = id.length < 2 ? [] : places().filter(p => p.id.toLowerCase().startsWith(id));
  return all.length === 1 || all[0]?.id.toLowerCase() === id ? all[0] : null;
}

/** Opens a roof from what the telephone has of it, and asks the service for what is newer. */
export async function openRoof(roof) {
  Object.assign(open, {roof, name: await shelf.kept('name') ?? '',
    sheet: await shelf.kept('sheet:' + roof.key) ?? null, record: await shelf.kept('record:' + roof.key) ?? null,
    days: await shelf.kept('days:' + roof.key) ?? null});
  await readQueue();
  await shelf.keep('current', roof.key);
}

export async function readQueue() {
  open.own = (await shelf.waiting()).filter(e => e.roof === open.roof.key);
  changed();
}

/** Fetches the roof anew; without a connection what is there stays. */
export async function refresh() {
  const {roof} = open;
  try {
    if (roof.token) Object.assign(roof, await service.link(roof));
    const sheet = await service.sheet(roof, roof.analysis);
    roof.title = sheet.title;
    await shelf.keep('roof:' + roof.key, {...roof});
    await shelf.keep('sheet:' + roof.key, sheet);
    open.sheet = sheet;
    await refreshRecord();
    open.trouble = '';
    await keepDays(roof);
    await keepSections(roof, sheet);
  } catch (e) {
    failed(e);
  }
  changed();
}

export async function refreshRecord() {
  const record = await service.record(open.roof, open.roof.analysis);
  await shelf.keep('record:' + open.roof.key, record);
  open.record = record;
  open.online = true;
}

/** Notes why a request failed. */
export function failed(e) {
  if (!(e instanceof service.Refused)) throw e;
  open.online = !service.isAway(e);
  if (!service.isAway(e)) open.trouble = e.message;
}

/** The plan of days; a roof without an order of work has none. */
async function keepDays(roof) {
  open.days = await service.days(roof, roof.analysis).catch(e => {
    if (service.isAway(e)) throw e;
    return null;
  });
  await shelf.keep('days:' + roof.key, open.days);
  changed();
}

/** A drawing for each detail and kind of node in use, of its longest line, so that there is one for every place. */
async function keepSections(roof, sheet) {
  const longest = new Map();
  for (const p of [...sheet.junctions, ...sheet.nodes]) {
    const k = usual(p), best = longest.get(k);
    if (p.items.length && (!best || (p.lengthM ?? 0) > (best.lengthM ?? 0))) longest.set(k, p);
  }
  for (const [k, p] of longest) {
    const key = `section:${sheet.result}:${k}`;
    if (!await shelf.kept(key)) await shelf.keep(key, await service.section(roof, roof.analysis, p.id).catch(() => ''));
  }
}

const usual = p => p.at ? 'node ' + p.kind : 'detail ' + p.detail;

/** The drawing of a place: its own where it can be had, else that of its detail; SVG, or nothing. */
export async function sectionOf(place) {
  const own = `section:${open.sheet.result}:${place.id}`, kept = await shelf.kept(own);
  if (kept) return kept;
  try {
    const text = await service.section(open.roof, open.roof.analysis, place.id);
    await shelf.keep(own, text);
    return text;
  } catch {
    return shelf.kept(`section:${open.sheet.result}:${usual(place)}`);
  }
}
