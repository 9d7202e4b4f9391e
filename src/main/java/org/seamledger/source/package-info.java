/**
 * Where models come from. A {@link org.seamledger.source.ModelSource} opens to an {@link org.seamledger.source.OpenModel}: its STEP bytes,
 * unpacked where they were packed, and the name to show. What cannot be a model ends in
 * {@link org.seamledger.finding.UnreadableModelException}.
 */
package org.seamledger.source;
