/**
 * The service and its page: requests in, answers out. The only room that knows Javalin. What an answer holds is decided elsewhere:
 * results come from {@code run}, storage is {@code ledger}'s. Every error leaves through {@code answer.Problems}, every request passes
 * {@code AccessGuard} first, and no text of a request ever becomes a path: files are stored under names that the program makes up, and
 * what the page consists of is read once at the start. {@code setting} says how to serve, {@code answer} how answers look, {@code job}
 * runs analyses in the background, {@code api} takes the requests.
 */
package org.seamledger.http;
