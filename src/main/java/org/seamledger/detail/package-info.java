/**
 * What the rules say of each junction: its kind and the sealing detail that belongs there. Knows the rules' results as words and numbers;
 * after this package nobody knows that a graph existed.
 */
package org.seamledger.detail;
