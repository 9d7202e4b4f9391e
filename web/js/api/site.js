// The service, as far as it is about the work on a roof.

import {call} from '../api.js';

const links = project => `/api/projects/${encodeURIComponent(project)}/links`;

/** How the work stands. */
export const record = id => call('GET', `/api/analyses/${encodeURIComponent(id)}/record`);
export const roofLinks = project => call('GET', links(project)).then(r => r.links);
/** Makes a link; its token is told this once. @param {{scope: string, name: string, days: number}} wish */
export const makeRoofLink = (project, wish) => call('POST', links(project), wish);
export const revokeRoofLink = id => call('DELETE', '/api/links/' + encodeURIComponent(id));
