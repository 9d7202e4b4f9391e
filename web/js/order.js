import {h, put} from './dom.js';
export function mountOrder(root) { put(root, h('p', {}, 'order')); }
