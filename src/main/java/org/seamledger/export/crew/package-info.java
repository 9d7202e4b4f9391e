/** The order of work for a crew: as text, as JSON. Same takeoff, same crew: same bytes. */
package org.seamledger.export.crew;
