// What this telephone keeps: roofs with their sheets and drawings, and the queue of what has not been sent yet.

const NAME = 'seamledger-roof';

let opening;
function database() {
  opening ??= new Promise((resolve, reject) => {
    const r = indexedDB.open(NAME, 1);
    r.onupgradeneeded = () => {
      r.result.createObjectStore('kept');
      r.result.createObjectStore('queue', {keyPath: 'n', autoIncrement: true});
    };
    r.onsuccess = () => resolve(r.result);
    r.onerror = () => reject(new Error('This browser keeps nothing (a private window?): without that the page can\'t work on a roof.'));
  });
  return opening;
}

/** Runs one piece of work on a store, and ends when it is on the telephone's disk. */
async function work(store, mode, fn) {
  const db = await database();
  return new Promise((resolve, reject) => {
    const t = db.transaction(store, mode, {durability: 'strict'}), request = fn(t.objectStore(store));
    t.oncomplete = () => resolve(request?.result);
    t.onerror = t.onabort = () => reject(new Error(t.error?.name === 'QuotaExceededError'
      ? 'There is no room left on this telephone; nothing was kept.' : 'The telephone could not keep this.'));
  });
}

export const kept = key => work('kept', 'readonly', s => s.get(key));
export const keep = (key, value) => work('kept', 'readwrite', s => s.put(value, key));
export const forget = key => work('kept', 'readwrite', s => s.delete(key));

/** Everything that waits, in the order in which it was said. */
export const waiting = () => work('queue', 'readonly', s => s.getAll());
export const addWaiting = entry => work('queue', 'readwrite', s => s.add(entry));
export const putWaiting = entry => work('queue', 'readwrite', s => s.put(entry));
export const removeWaiting = n => work('queue', 'readwrite', s => s.delete(n));
