// The ledger's table: filters above, rows, sums below.

import {h, put} from '../dom.js';
import {state, watch} from '../state.js';
import {Grid} from './grid.js';
import {listen} from './input.js';
import {layout} from './layout.js';
import {ROW} from './lines.js';
import {drawTools} from './tools.js';
import {beforePrint, drawTotals} from './totals.js';

export function mountTable(root) {
  const tools = h('div', {class: 'tools'}), totals = h('div', {class: 'totals'}), grid = new Grid();
  root.style.setProperty('--row-height', ROW + 'px');
  put(root, tools, grid.root, totals);
  const isThere = () => state.ledger && root.isConnected;
  let columns = '';
  const compute = () => {
    grid.compute();
    if (columns !== layout.template) drawTools(tools);
    columns = layout.template;
    drawTotals(totals, grid.data);
  };
  listen(grid);
  drawTools(tools);
  watch(['filters', 'sort', 'group', 'closed', 'reviews', 'marks', 'units', 'ledger', 'columns'], changed => {
    if (!isThere()) return;
    compute();
    if (changed.has('filters') || changed.has('ledger') || changed.has('columns')) drawTools(tools);
  });
  watch(['selected'], () => isThere() && grid.showSelected());
  root.addEventListener('shown', () => {
    grid.active = -1;
    compute();
    grid.reveal(grid.active);
  });
  new ResizeObserver(() => isThere() && (grid.isOutOfShape() ? compute() : grid.draw())).observe(grid.root);
  beforePrint(root, () => grid.data.rows);
}
