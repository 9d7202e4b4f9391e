package org.seamledger.export.submittal;

/** A part of a submittal: some page sequences. */
interface SubmittalPages {

  /** Where it begins, and what can be found in it. */
  OutlineEntry outline();

  void write(FoWriter fo);
}
