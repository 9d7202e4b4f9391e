package org.seamledger.takeoff;

import org.seamledger.element.Element;

/**
 * What people need to find an element again.
 *
 * @param model index into the takeoff's models
 */
public record ElementLabel(String globalId, String ifcClass, String name, int model) {

  static ElementLabel of(Element element) {
    return new ElementLabel(element.globalId(), element.ifcClass(), element.name(), element.model());
  }
}
