/**
 * Bodies: representation items (swept, bounded, tessellated, Boolean) to {@link org.seamledger.geometry.Solid}. A {@code Draft} says where
 * an item is without making its body, so that only what is near a roof is made.
 */
package org.seamledger.ifc.solid;
