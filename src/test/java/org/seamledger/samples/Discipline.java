package org.seamledger.samples;

import java.util.Optional;

/**
 * One of several models of a building.
 *
 * @param file name without its ending
 * @param part what of the building is in it; the building's name, so that GlobalIds are the building's
 * @param map where its world lies in a map, if it says so
 */
record Discipline(String file, House part, Form form, Optional<Georeference> map) {

  String ifc() {
    return IfcWriter.text(part, form, map);
  }
}
