package org.seamledger.step;

import java.util.List;

/**
 * One entity instance, decoded.
 *
 * @param keyword entity name in upper case, such as {@code IFCWALL}
 * @param parameters in the schema's order
 */
public record Instance(long id, String keyword, List<Value> parameters) {
  public Instance {
    parameters = List.copyOf(parameters);
  }

  /** Parameter {@code i} from 0; omitted where the instance has fewer. */
  public Value parameter(int i) {
    return i < parameters.size() ? parameters.get(i) : new Value.Omitted();
  }
}
