/**
 * Where things lie: local placements and transformation operators as {@link org.seamledger.geometry.Transform}, and the conversions of a
 * model's coordinates to a map's. Metres, Z up; a placement that refers to itself is a problem, not an endless loop.
 */
package org.seamledger.ifc.placement;
