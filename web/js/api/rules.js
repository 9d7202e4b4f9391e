// The rules as the service has them, and what would be with others.

import {a, call, refused, sectionAt} from '../api.js';

/** The section as it would be with another detail. */
export const sectionWith = (id, junction, detail) => `${sectionAt(id, junction)}?detail=${encodeURIComponent(detail)}`;
/** Details for a junction, those that fit it first. @param {string} kind that it is taken for; empty for its own */
export const detailsFor = (id, junction, kind) =>
  call('GET', `${a(id)}/junctions/${encodeURIComponent(junction)}/details?kind=${encodeURIComponent(kind)}`).then(r => r.details);

/** @typedef {{limits: Object<string, string>, files: Object<string, string>}} RuleEdits numbers by limit, texts by file */

/** The rules in view. */
export const rules = () => call('GET', '/api/rules');
/** The same with edits; refused where they can't be used. @param {RuleEdits} edits */
export const rulesWith = edits => call('POST', '/api/rules', edits);
/** What edits change of an analysis. */
export const onRoof = (id, edits) => call('POST', a(id) + '/rules', edits);
/** What edits change of a sample. */
export const onSample = (name, edits) => call('POST', `/api/samples/${encodeURIComponent(name)}/rules`, edits);
/** Texts of the files of an archive, by name. @param {Blob} archive @returns {Promise<{files: Object<string, string>}>} */
export async function unpacked(archive) {
  const answer = await fetch('/api/rules/archive', {method: 'POST', body: archive, headers: {'Content-Type': 'application/zip'}});
  const body = await answer.json().catch(() => ({}));
  if (!answer.ok) throw refused(answer.status, body);
  return body;
}
/** The edited rules as an archive. @returns {Promise<Blob>} */
export async function folder(edits) {
  const answer = await fetch('/api/rules/folder',
    {method: 'POST', body: JSON.stringify(edits), headers: {'Content-Type': 'application/json'}});
  if (!answer.ok) throw refused(answer.status, await answer.json().catch(() => ({})));
  return answer.blob();
}
