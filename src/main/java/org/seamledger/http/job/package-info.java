/**
 * Analyses in the background: they wait for their turn, run ({@code run}), are stopped, and run again when users decide. Nothing here
 * knows a request.
 */
package org.seamledger.http.job;
