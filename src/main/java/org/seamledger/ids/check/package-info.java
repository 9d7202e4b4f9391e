/**
 * What models say to specifications. Each model is gone through class by class, each element once for all specifications; relations are
 * turned round once, and only those that some facet requires.
 */
package org.seamledger.ids.check;
