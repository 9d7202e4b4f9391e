/**
 * The service and its page: requests in, answers out. The only room that knows Javalin. What an answer holds is decided elsewhere: results come
 * from {@code run}, storage is {@code ledger}'s. Every error leaves through {@code Problems}, every request passes
 * {@code AccessGuard} first, and no text of a request ever becomes a path: files are stored under names that the program makes up, and what the page
 * consists of is read once at the start.
 */
package org.seamledger.http;
