// The prices of a project.

import {call, refused} from '../api.js';

export const pricesAt = project => `/api/projects/${encodeURIComponent(project)}/prices`;
export const removePrices = project => call('DELETE', pricesAt(project));
/** @param {File} file comma-separated values */
export async function putPrices(project, file) {
  const answer = await fetch(`${pricesAt(project)}?name=${encodeURIComponent(file.name)}`,
    {method: 'PUT', body: file, headers: {'Content-Type': 'text/csv', Accept: 'application/json'}});
  if (!answer.ok) throw refused(answer.status, await answer.json().catch(() => ({})));
}
