/**
 * The whole program, one call after another: {@link org.seamledger.takeoff.Analysis} takes models in and gives a
 * {@link org.seamledger.takeoff.Takeoff}, which holds everything that a result shows and nothing of how it came about.
 */
package org.seamledger.takeoff;
