/** Cutting runs and pieces from stock lengths: lengths are metres outside, whole hundredths of a millimetre inside. */
package org.seamledger.order.stock;
