// What the places of the open roof are called. Their ids stand on the printed sheets.

import {placeNames} from '../ledger/placenames.js';
import {open, places} from './roof.js';

let known = {sheet: null, names: new Map()};
const label = place => (place.at ? open.sheet.nodeKinds : open.sheet.kinds)?.find(k => k.id === place.kind)?.label ?? place.kind;

/** Found once for a sheet. */
function names() {
  if (known.sheet !== open.sheet) known = {sheet: open.sheet, names: placeNames(places(), label)};
  return known.names;
}

/** As "Ridge 2"; a face and what is not of this roof by its id. */
export const nameOf = id => names().get(id)?.text ?? (/^F\d/.test(id) ? `Face ${id}` : id);

/** As "north-west". */
export const partOf = id => names().get(id)?.part ?? '';
