package org.seamledger.step;

import java.io.IOException;

/** Gives the bytes of records, from blocks of the file that it keeps for the next record. */
interface RecordBytes {

  /** Has {@code wanted} bytes from an offset in {@link #buffer} and gives the place of the first. */
  int load(long offset, int wanted) throws IOException;

  /** Good until the next {@link #load}. */
  byte[] buffer();

  /** Behind the last of the wanted bytes, or of those that the file has. */
  int end(int place, int wanted);
}
