/** Findings as topics of the BIM Collaboration Format, for coordination tools: what, why, what to do, and a picture of where. */
package org.seamledger.export.bcf;
