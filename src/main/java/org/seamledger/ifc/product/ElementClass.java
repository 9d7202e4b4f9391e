package org.seamledger.ifc.product;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A class of building elements that may be or meet a roof, from the table {@code classes.txt}.
 *
 * @param keyword as in an exchange structure: {@code IFCWALL}
 * @param name in the standard's spelling: {@code IfcWall}
 */
public record ElementClass(String keyword, String name, Role role) {

  /** What elements of a class may be to a roof; the element's own type and whole decide further. */
  enum Role {
    ROOF, SLAB, COVERING, PLATE, PROXY, PART, ASSEMBLY, ACCESSORY, WALL, OPENING_FILLER, PENETRATION, SERVICE
  }

  /** Whether it is a pipe, a duct, a cable tray, or another part of a building's services. */
  boolean isService() {
    return role == Role.SERVICE;
  }

  private static final List<ElementClass> ALL = read();
  private static final Map<String, ElementClass> BY_KEYWORD = byKeyword();

  /** All classes in the table's order. */
  static List<ElementClass> all() {
    return ALL;
  }

  /** The class with this keyword, or null where elements of that class are left out. */
  static ElementClass of(String keyword) {
    return BY_KEYWORD.get(keyword);
  }

  private static Map<String, ElementClass> byKeyword() {
    Map<String, ElementClass> map = new HashMap<>();
    ALL.forEach(c -> map.put(c.keyword, c));
    return map;
  }

  private static List<ElementClass> read() {
    List<ElementClass> all = new ArrayList<>();
    for (String line : lines("classes.txt")) {
      String[] words = line.split(" ");
      Role role = Role.valueOf(words[0].toUpperCase(Locale.ROOT).replace('-', '_'));
      all.add(new ElementClass(words[1].toUpperCase(Locale.ROOT), words[1], role));
    }
    return List.copyOf(all);
  }

  /** Lines of a resource beside this class, without comments and empty lines. */
  static List<String> lines(String resource) {
    try (BufferedReader in = new BufferedReader(
        new InputStreamReader(ElementClass.class.getResourceAsStream(resource), StandardCharsets.UTF_8))) {
      return in.lines().map(String::trim).filter(l -> !l.isEmpty() && !l.startsWith("#")).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
