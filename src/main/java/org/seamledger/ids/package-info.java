/**
 * Information Delivery Specifications (IDS 1.0): the document, its facets and restrictions, and whether a file is a valid one. What a model
 * says to it is found in {@code ids.check}.
 */
package org.seamledger.ids;
