// Addresses of small pictures of roofs.

import {a} from '../api.js';

export const thumbnailAt = id => a(id) + '/thumbnail.svg';
export const sampleThumbnailAt = name => `/api/samples/${encodeURIComponent(name)}/thumbnail.svg`;
