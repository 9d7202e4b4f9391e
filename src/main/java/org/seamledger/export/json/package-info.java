/**
 * Parts of the JSON ledger: each takes a part of a takeoff and writes it to a {@link org.seamledger.export.json.JsonOutput}, numbers in
 * metres and degrees with a fixed number of places, keys in a fixed order.
 */
package org.seamledger.export.json;
