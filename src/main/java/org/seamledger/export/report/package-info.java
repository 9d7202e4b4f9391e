/**
 * Sections of the text reports: each takes a takeoff or a part of it and adds its lines to a
 * {@link org.seamledger.export.report.TextPage}, at most 100 columns wide.
 */
package org.seamledger.export.report;
