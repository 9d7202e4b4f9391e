// The result in the forms of other programs.

import {h} from '../dom.js';
import {state} from '../state.js';
import * as api from '../api.js';

const FORMS = [['findings.bcf', 'BCF 3.0'], ['findings-2.1.bcf', 'BCF 2.1'], ['graph.ttl', 'Turtle'], ['graph.jsonld', 'JSON-LD']];

export const handedOn = () => h('p', {}, 'For other programs: ',
  FORMS.map(([file, text]) => [h('a', {href: api.fileAt(state.analysis.id, file), download: file}, text), ' ']));
