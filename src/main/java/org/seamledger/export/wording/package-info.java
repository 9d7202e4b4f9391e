/**
 * Words that several outputs share: names of elements and facts, advice to findings, scope and cautions, manual overrides. Findings, facts
 * and names go in; one safe line of text comes out.
 */
package org.seamledger.export.wording;
