/**
 * Measures with their units: exact factors, text in and text out. Knows nothing of roofs.
 *
 * <p>Input: text such as {@code "3/16 in"}, {@code "10 ft 3 in"}, {@code "406 mm"}, {@code "3:12"}, {@code "10.1 fl oz"}. Output: exact
 * fractions in the SI unit of the dimension, and doubles where physics begins. Everything is immutable.
 */
package org.seamledger.measure;
