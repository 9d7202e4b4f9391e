/**
 * Pictures of a place on the roof: bodies as flat polygons, a camera that sees the place from outside and above, and the picture that it
 * takes. Drawn by this program alone, pixel by pixel, so that the same result gives the same picture on every machine.
 */
package org.seamledger.export.view;
