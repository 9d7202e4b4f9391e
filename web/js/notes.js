import {h, put} from './dom.js';
export function mountNotes(root) { put(root, h('p', {}, 'notes')); }
