import {h, put} from './dom.js';
export function mountRevisions(root) { put(root, h('p', {}, 'revisions')); }
