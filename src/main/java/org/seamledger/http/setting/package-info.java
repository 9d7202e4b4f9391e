/** How to serve, and how much one server takes on. */
package org.seamledger.http.setting;
