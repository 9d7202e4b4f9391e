// Roof systems: what their values are, and one roof under several of them.

import {a, call, refused} from '../api.js';

let form;
/** What the values of a roof system are; asked once. */
export function systemForm() {
  form ??= call('GET', '/api/system').then(r => r.fields).catch(e => { form = null; throw e; });
  return form;
}

/** @param {{name: string, system?: object, changes?: Object<string, string>}[]} alternates compared with this analysis */
export const alternates = (id, alternates) => call('POST', a(id) + '/alternates', {alternates});
export async function alternatesTable(id, alternates) {
  const answer = await fetch(a(id) + '/alternates?format=csv',
    {method: 'POST', body: JSON.stringify({alternates}), headers: {'Content-Type': 'application/json'}});
  if (!answer.ok) throw refused(answer.status, await answer.json().catch(() => ({})));
  return answer.text();
}
