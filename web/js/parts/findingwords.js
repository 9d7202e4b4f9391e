// A finding in words: what is wrong comes first and is short, how much and what with comes below it.

import {KINDS} from '../ledger/marks.js';
import {capital} from '../units.js';
import {written} from '../units/written.js';

/** How many more places there are stands beside them anyway. */
const ELSEWHERE = /; the same at [\d,]+ other places?$/;
/** What the command line would do, a button does here. */
const COMMAND = /; --place .* does it\.?$/;
/** Kinds of lines are called by their labels. */
const labelled = text => text.replace(/\bthis ([a-z]+(?:-[a-z]+)+)/g, (all, id) =>
  KINDS[id] && !KINDS[id].includes(',') ? `this ${KINDS[id].toLowerCase()}` : all);

/** @param {import('../types.js').Finding} f */
function parts(f) {
  const text = labelled(written(f.message)).replace(ELSEWHERE, '').replace(COMMAND, ''), at = text.search(/[:;] /);
  return at < 0 ? [text, ''] : [text.slice(0, at), text.slice(at + 2)];
}

/** What is wrong, as a title. */
export const titleOf = f => capital(parts(f)[0]);

/** What the message says besides, as a sentence; empty where that is all. */
export function restOf(f) {
  const rest = parts(f)[1];
  return rest && capital(rest) + (/[.!?]$/.test(rest) ? '' : '.');
}

/** What to do about it. */
export const adviceOf = f => written(f.action ?? f.advice ?? '');
export const reasonOf = f => written(f.reason ?? '');
