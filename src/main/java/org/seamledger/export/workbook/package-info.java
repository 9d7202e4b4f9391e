/** The result as a workbook: an order that calculates, and tables of everything else. The only package that knows the library for it. */
package org.seamledger.export.workbook;
