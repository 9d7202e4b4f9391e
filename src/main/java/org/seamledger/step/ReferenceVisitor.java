package org.seamledger.step;

/** Is shown the references of instance after instance. */
@FunctionalInterface
public interface ReferenceVisitor {

  /** @param references good during this call only */
  void visit(long id, References references);
}
