package org.seamledger.samples;

import static org.seamledger.samples.StepText.word;

import java.util.List;
import org.seamledger.samples.Form.Schema;
import org.seamledger.samples.Thing.Role;

/** Which class a thing has in each schema, and the attributes that the class adds to the common eight. */
final class ElementClasses {
  private ElementClasses() {
  }

  static String keyword(Role role, Schema schema) {
    boolean old = schema == Schema.IFC2X3;
    return switch (role) {
      case WALL, PARAPET -> "IFCWALL";
      case CHIMNEY -> old ? "IFCBUILDINGELEMENTPROXY" : "IFCCHIMNEY";
      case PIPE -> old ? "IFCFLOWSEGMENT" : "IFCPIPESEGMENT";
      case DUCT -> old ? "IFCFLOWSEGMENT" : "IFCDUCTSEGMENT";
      case FITTING -> old ? "IFCFLOWFITTING" : "IFCPIPEFITTING";
      case COLUMN -> "IFCCOLUMN";
      case WINDOW -> "IFCWINDOW";
      case PROXY -> "IFCBUILDINGELEMENTPROXY";
      case FLASHING -> "IFCCOVERING";
      case GUTTER -> old ? "IFCFLOWSEGMENT" : "IFCPIPESEGMENT";
      case OUTLET -> old ? "IFCFLOWTERMINAL" : "IFCWASTETERMINAL";
      case DOOR -> "IFCDOOR";
      case SPACE -> "IFCSPACE";
    };
  }

  static List<Object> complete(List<Object> common, Role role, Schema schema) {
    boolean old = schema == Schema.IFC2X3;
    if (role == Role.WINDOW) {
      common.add(null);
      common.add(null);
      if (!old) {
        common.add(word("SKYLIGHT"));
        common.add(null);
        common.add(null);
      }
    } else if (role == Role.DOOR) {
      common.add(null);
      common.add(null);
      if (!old) {
        common.add(word("DOOR"));
        common.add(null);
        common.add(null);
      }
    } else if (role == Role.SPACE) {
      common.add(word("ELEMENT"));
      common.add(word("INTERNAL"));
      common.add(null);
    } else if (role == Role.FLASHING) {
      common.add(word("NOTDEFINED"));
    } else if (old) {
      if (keyword(role, schema).equals("IFCBUILDINGELEMENTPROXY")) {
        common.add(null);
      }
    } else {
      common.add(switch (role) {
        case WALL -> word("STANDARD");
        case PARAPET -> word("PARAPET");
        case PIPE, DUCT -> word("RIGIDSEGMENT");
        case FITTING -> word("CONNECTOR");
        case COLUMN -> word("COLUMN");
        case GUTTER -> word("GUTTER");
        case OUTLET -> word("ROOFDRAIN");
        default -> word("NOTDEFINED");
      });
    }
    return common;
  }
}
