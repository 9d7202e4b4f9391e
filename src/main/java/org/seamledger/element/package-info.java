/**
 * The building in the program's own words: roofs, what is near them, openings, flashings, as solids with properties. Metres, Z up, moved
 * near the
 * origin; the offset back to the model's coordinates is kept. Nothing here knows that a file existed; what could not be read is among
 * the findings.
 */
package org.seamledger.element;
