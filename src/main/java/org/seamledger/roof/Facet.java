package org.seamledger.roof;

import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;

/**
 * A flat piece of the roof's surface.
 *
 * @param plane its plane, normal pointing up
 * @param area its exposed area in the plane's coordinates
 */
public record Facet(Plane plane, Region area) {
}
