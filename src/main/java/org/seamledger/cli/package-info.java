/**
 * The commands. Results go to standard output, everything else to standard error; the exit status says how it went
 * ({@link org.seamledger.cli.ExitStatus}). The only package that writes to the process's streams.
 */
package org.seamledger.cli;
