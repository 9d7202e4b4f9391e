// Texts as files.

import {h} from '../dom.js';
import {state} from '../state.js';

/** A file's name with model and revision: {@code school-revision-3-order.csv}. */
export const fileName = (what, ending = 'csv') =>
  `${state.analysis.title.replace(/\.(ifc|ifczip|gz|zip)$/gi, '').replace(/[^\p{L}\p{N}._-]+/gu, '-')}-revision-${state.analysis.revision}`
    + `-${what}.${ending}`;

/** Saves a text under a name. */
export const saveText = (name, text, type) => saveBlob(name, new Blob([text], {type}));

/** Saves bytes under a name. */
export function saveBlob(name, blob) {
  const url = URL.createObjectURL(blob);
  h('a', {href: url, download: name}).click();
  URL.revokeObjectURL(url);
}
