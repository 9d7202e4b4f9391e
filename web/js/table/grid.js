// The rows in sight. Only these are in the document, so twenty thousand are as quick as twenty.

import {h, link, put, say} from '../dom.js';
import {set, state} from '../state.js';
import {rows} from '../ledger/rows.js';
import {groupText} from './columns.js';
import {layOut, layout} from './layout.js';
import {ROW, drawHeader, line, mark} from './lines.js';

const SPARE_ROWS = 8;

/** Shows rows, and keeps the place where the keyboard is. */
export class Grid {
  constructor() {
    this.canvas = h('div', {class: 'canvas', role: 'rowgroup'});
    this.header = h('div', {class: 'header', role: 'rowgroup'});
    this.root = h('div', {class: 'rows', role: 'treegrid', tabindex: 0, 'aria-label': 'Junctions'},
      this.header, this.canvas);
    this.data = {list: [], rows: [], totals: {}};
    this.active = 0;
    // Rows that are in the document already stay as they are: a row must not vanish under a pointer that is pressing it.
    this.shown = new Map();
    this.edition = 0;
  }

  /** Whether another room holds other columns. */
  isOutOfShape() {
    return layOut(this.root.clientWidth);
  }

  /** Takes filters, order and groups anew. */
  compute() {
    layOut(this.root.clientWidth);
    for (const el of [this.header, this.canvas]) el.style.minWidth = layout.width + 'px';
    this.root.setAttribute('aria-colcount', layout.columns.length);
    const was = this.data.rows[this.active]?.group;
    this.data = rows(state.ledger, state);
    const all = this.data.rows;
    const at = all.findIndex(was === undefined ? r => r.j?.id === state.selected : r => r.group === was);
    this.active = at >= 0 ? at : Math.max(0, Math.min(this.active, all.length - 1));
    this.canvas.style.height = all.length * ROW + 'px';
    this.root.setAttribute('aria-rowcount', all.length + 1);
    this.edition++;
    drawHeader(this.header);
    if (all.length) {
      this.canvas.querySelector('.empty')?.remove();
      this.draw();
    } else {
      this.shown.clear();
      this.drawEmpty();
    }
  }

  draw() {
    if (!state.ledger || !this.root.isConnected) return;
    const {root, shown, canvas, data} = this;
    const first = Math.max(0, Math.floor(root.scrollTop / ROW) - SPARE_ROWS);
    const last = Math.min(data.rows.length, Math.ceil((root.scrollTop + root.clientHeight) / ROW) + SPARE_ROWS);
    for (const [i, x] of shown) {
      if (i >= first && i < last && x.edition === this.edition) continue;
      x.el.remove();
      shown.delete(i);
    }
    const fresh = document.createDocumentFragment();
    for (let i = first; i < last; i++) {
      if (!shown.has(i)) {
        const el = line(data.rows[i], i);
        shown.set(i, {el, edition: this.edition});
        fresh.append(el);
      }
      mark(shown.get(i).el, data.rows[i], i === this.active);
    }
    canvas.append(fresh);
    if (shown.has(this.active)) root.setAttribute('aria-activedescendant', 'row' + this.active);
    else root.removeAttribute('aria-activedescendant');
  }

  drawEmpty() {
    put(this.canvas, h('div', {class: 'empty', role: 'row'}, h('span', {role: 'gridcell'}, state.ledger.lines.length
      ? ['No junction matches. ', link('Show all of them', () => set({filters: {}}))]
      : 'No junction was found in this model. The findings say why.')));
    this.canvas.style.height = '4em';
  }

  /** Scrolls as far as needed to show a row. */
  reveal(i) {
    const {root} = this, top = i * ROW, room = root.clientHeight - this.header.offsetHeight;
    if (top < root.scrollTop) root.scrollTop = top;
    else if (top + ROW > root.scrollTop + room) root.scrollTop = top + ROW - room;
  }

  moveTo(i) {
    this.active = Math.max(0, Math.min(this.data.rows.length - 1, i));
    const r = this.data.rows[this.active];
    this.reveal(this.active);
    if (r?.j) return set({selected: r.j.id});
    this.draw();
    if (r) say(`${groupText(r.group)}, ${r.totals.count} lines`);
  }

  /** Folds a group or unfolds it. */
  fold(r) {
    const closed = new Set(state.closed);
    if (!closed.delete(r.group)) closed.add(r.group);
    set({closed});
  }

  /** Goes to the chosen junction; it shows, even where its group was folded away. */
  showSelected() {
    const at = this.data.rows.findIndex(r => r.j?.id === state.selected);
    if (at >= 0) {
      this.active = at;
      this.reveal(at);
      this.draw();
    } else if (state.ledger.byId.has(state.selected) && state.closed.size) set({closed: new Set()});
    else this.draw();
  }
}
