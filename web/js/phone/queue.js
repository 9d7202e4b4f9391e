// Sends what was said on the roof: in its order, once each, when there is a connection. What is refused stays, with the reason.

import * as shelf from './shelf.js';
import * as service from './service.js';
import {changed, failed, open, readQueue, refreshRecord} from './roof.js';

const PAUSE_MS = 15_000;

/** Says something: it is kept on the telephone before this ends, and sent as soon as that is possible. */
export async function say(kind, place, {point = '', text = '', photo = null, withPlace = false} = {}) {
  const before = open.own.filter(e => point && e.event.point === point && e.state !== 'refused').at(-1);
  const own = open.own.filter(e => e.event.place === place && e.state !== 'refused').map(e => e.event.id);
  const event = {id: crypto.randomUUID(), kind, place, point, by: open.name, at: new Date().toISOString(), base: open.record?.version ?? 0,
    after: before?.event.id ?? '', text};
  const {key, analysis} = open.roof;
  await shelf.addWaiting({roof: key, analysis, state: 'waiting', photo, withPlace, seq: 0, why: '', own, event});
  await readQueue();
  flush();
}

let again;
/** Sends what waits, one page at a time where several are open. */
export async function flush() {
  clearTimeout(again);
  await navigator.locks.request('seamledger-send', sendAll);
  await readQueue();
  if (open.own.some(e => e.state === 'waiting')) again = setTimeout(flush, PAUSE_MS);
}

async function sendAll() {
  try {
    for (const entry of (await shelf.waiting()).filter(e => e.state === 'waiting' && e.roof === open.roof.key)) {
      await send(entry);
      await readQueue();
    }
    await refreshRecord();
    await settle();
    open.trouble = '';
  } catch (e) {
    failed(e);
    changed();
  }
}

/**
 * Who signs has seen what this telephone said of the place before, though the service had not numbered it then. What others said in between
 * stays unseen. Kept before it is sent: a second try says the same.
 */
async function withOwnSeen(entry) {
  const {event, own} = entry;
  if (event.kind !== 'sign-off' || !own?.length) return entry;
  const there = (await service.record(open.roof, entry.analysis)).places.find(p => p.id === event.place)?.events ?? [];
  const base = Math.max(event.base, ...there.filter(e => own.includes(e.id)).map(e => e.seq));
  const isForeign = there.some(e => e.seq > event.base && e.seq <= base && !own.includes(e.id));
  const seen = {...entry, own: [], event: isForeign ? event : {...event, base}};
  await shelf.putWaiting(seen);
  return seen;
}

/** Refusals for good are noted with the entry; anything else ends the round. */
async function send(waiting) {
  let entry = waiting;
  try {
    entry = await withOwnSeen(waiting);
    if (entry.photo) await service.putPhoto(open.roof, entry.analysis, entry.event.id, entry.photo, entry.withPlace);
    const {seq} = await service.putEvent(open.roof, entry.analysis, entry.event);
    await shelf.putWaiting({...entry, state: 'sent', seq});
  } catch (e) {
    if (!(e instanceof service.Refused) || ![400, 403, 404, 409, 413, 415, 422].includes(e.status)) throw e;
    await shelf.putWaiting({...entry, state: 'refused', why: e.message});
  }
}

/** What the record has now need not be kept here any more. */
async function settle() {
  for (const e of await shelf.waiting()) {
    if (e.roof === open.roof.key && e.state === 'sent' && e.seq <= open.record.version) await shelf.removeWaiting(e.n);
  }
}

/** Lets go of something that was refused. */
export async function dismiss(entry) {
  await shelf.removeWaiting(entry.n);
  await readQueue();
}
