// How much of the roof's length was reviewed, has a flashing in the model, and has open findings.

import {reviewOf} from './result.js';

/**
 * Lengths in metres by what is known about them.
 * @param {import('../types.js').Outline} ledger
 * @param {Map<string, import('../types.js').Review>} reviews
 * @param {Map<number, import('../types.js').Mark>} marks
 */
export function coverage(ledger, reviews, marks) {
  const c = {checked: 0, question: 0, recheck: 0, open: 0, modelled: 0, gutter: 0, findings: 0, overridden: 0};
  for (const j of ledger.junctions) {
    c[reviewOf(j, reviews)] += j.lengthM;
    c.modelled += j.modelledM ?? 0;
    c.gutter += j.gutterM ?? 0;
    if (j.found.some(f => isMatter(f) && marks.get(f.place)?.state !== 'accepted')) c.findings += j.lengthM;
    if (j.decided) c.overridden += j.lengthM;
  }
  return c;
}

/** The note that a line is overridden says what was decided; nothing is left open by it. */
const isMatter = f => f.code !== 'review/chosen-by-hand';

export const MODELLED = {yes: 'Flashing in the model', no: 'No flashing in the model', gutter: 'Gutter in the model'};

export const hasModelled = (j, what) =>
  what === 'gutter' ? j.gutterM > 0 : what === 'yes' ? j.modelledM > 0 : !(j.modelledM > 0);
