package org.seamledger.samples;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import org.seamledger.element.Building;
import org.seamledger.element.Category;
import org.seamledger.element.Element;
import org.seamledger.element.Opening;
import org.seamledger.geometry.MeshBuilder;
import org.seamledger.geometry.Solid;
import org.seamledger.geometry.Vec3;

/** A house as the stages after reading see it, so that they can be checked without a file. */
public final class HouseBuilding {
  private HouseBuilding() {
  }

  public static Building of(House house) {
    return of(house, RoofPlane.Cut.PLUMB);
  }

  public static Building of(House house, RoofPlane.Cut cut) {
    List<Element> roofs = new ArrayList<>();
    List<Element> neighbours = new ArrayList<>();
    for (RoofPlane r : house.roofs()) {
      List<Opening> openings = new ArrayList<>();
      for (RoofPlane.Hole h : r.openings()) {
        Thing filling = h.filling();
        openings.add(new Opening(id(house, h.name()), List.of(solid(h.body())), filling == null ? "" : id(house, filling.name()),
            filling == null ? "" : "IfcWindow"));
        if (filling != null) {
          neighbours.add(neighbour(house, filling));
        }
      }
      roofs.add(new Element(id(house, r.name()), "IfcSlab", Category.ROOF, r.name(), 0, List.of(solid(r.body(cut))), openings, "",
          new TreeMap<>()));
    }
    house.shells().forEach(r -> roofs.add(new Element(id(house, r.name()), "IfcSlab", Category.ROOF, r.name(), 0,
        r.shells().stream().map(HouseBuilding::solid).toList(), List.of(), "", new TreeMap<>())));
    house.things().forEach(t -> neighbours.add(neighbour(house, t)));
    Comparator<Element> byId = Comparator.comparing(Element::globalId);
    roofs.sort(byId);
    neighbours.sort(byId);
    List<Element> flashings =
        neighbours.stream().filter(e -> e.category() == Category.FLASHING || e.category() == Category.GUTTER).toList();
    neighbours.removeAll(flashings);
    return new Building(List.of(), roofs, neighbours, flashings, Vec3.ZERO, List.of());
  }

  private static String id(House house, String part) {
    return GlobalIds.of(house.name() + "/" + part);
  }

  private static Category category(Thing.Role role) {
    return switch (role) {
      case WALL, PARAPET -> Category.WALL;
      case PIPE, DUCT, FITTING, OUTLET -> Category.SERVICE;
      case FLASHING -> Category.FLASHING;
      case GUTTER -> Category.GUTTER;
      case DOOR -> Category.DOOR;
      case SPACE -> Category.SPACE;
      case CHIMNEY, COLUMN, WINDOW, PROXY -> Category.PENETRATION;
    };
  }

  private static Element neighbour(House house, Thing t) {
    String ifcClass = switch (t.role()) {
      case WALL, PARAPET -> "IfcWall";
      case CHIMNEY -> "IfcChimney";
      case PIPE -> "IfcPipeSegment";
      case DUCT -> "IfcDuctSegment";
      case FITTING -> "IfcPipeFitting";
      case COLUMN -> "IfcColumn";
      case WINDOW -> "IfcWindow";
      case PROXY -> "IfcBuildingElementProxy";
      case FLASHING -> "IfcCovering";
      case GUTTER -> "IfcPipeSegment";
      case OUTLET -> "IfcWasteTerminal";
      case DOOR -> "IfcDoor";
      case SPACE -> "IfcSpace";
    };
    return new Element(id(house, t.name()), ifcClass, category(t.role()), t.name(), 0,
        t.bodies().stream().map(HouseBuilding::solid).toList(), List.of(), "", new TreeMap<>());
  }

  private static Solid solid(Body body) {
    Shell shell = FaceWriter.shell(body);
    MeshBuilder mesh = new MeshBuilder();
    for (Shell.Face f : shell.faces()) {
      mesh.face(corners(shell, f.outer()), f.inner().stream().map(h -> corners(shell, h)).toList());
    }
    return mesh.build();
  }

  private static List<Vec3> corners(Shell shell, List<Integer> loop) {
    return loop.stream().map(shell.points()::get).toList();
  }
}
