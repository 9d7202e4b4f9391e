/**
 * The BIM Collaboration Format of buildingSMART: its versions, and what comes back in such a file from a coordination tool. Knows nothing
 * of roofs. Files are taken from anybody: no document type, no entity and no file outside the package is ever read, and what is in it is
 * read up to fixed limits.
 */
package org.seamledger.bcf;
