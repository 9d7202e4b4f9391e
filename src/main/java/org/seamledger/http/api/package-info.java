/** The addresses under /api: each class takes the requests for one sort of thing. */
package org.seamledger.http.api;
