package org.seamledger.ids;

import java.util.Arrays;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import javax.xml.datatype.DatatypeConstants;
import javax.xml.datatype.DatatypeFactory;

/** A simple type of XML Schema: which texts belong to it, and how to say so. */
record XmlType(String expected, Predicate<String> accepts) {

  static final XmlType ANY = new XmlType("text", text -> true);
  static final XmlType DATE = new XmlType("a date such as 2026-01-31", XmlType::isDate);
  /** IDS 1.0, ids.xsd, element author. */
  static final XmlType EMAIL = matching("an e-mail address", "[^@]+@[^\\.]+\\..+");
  /** IDS 1.0, ids.xsd, type upperCaseName. */
  static final XmlType UPPER_CASE = matching("a name in upper case, letters only", "[A-Z]+");
  static final XmlType VERSIONS = new XmlType("a list of IFC2X3, IFC4 and IFC4X3_ADD2", XmlType::areVersions);
  static final XmlType WHOLE = collapsed("a whole number from 0", "\\+?[0-9]+|-0+");
  static final XmlType POSITIVE = collapsed("a whole number from 1", "\\+?0*[1-9][0-9]*");
  static final XmlType OCCURS = collapsed("a whole number from 0, or unbounded", "\\+?[0-9]+|-0+|unbounded");
  static final XmlType BOOLEAN = collapsed("true or false", "true|false|1|0");
  static final XmlType NAME = collapsed("a name", "[\\p{L}_:][\\p{L}\\p{N}_:.\\-]*");
  static final XmlType NC_NAME = collapsed("an identifier", "[\\p{L}_][\\p{L}\\p{N}_.\\-]*");

  static XmlType oneOf(String... words) {
    Set<String> allowed = Set.of(words);
    return new XmlType(String.join(", ", words), allowed::contains);
  }

  static XmlType matching(String expected, String pattern) {
    Pattern compiled = Pattern.compile(pattern);
    return new XmlType(expected, text -> compiled.matcher(text).matches());
  }

  private static XmlType collapsed(String expected, String pattern) {
    Pattern compiled = Pattern.compile(pattern);
    return new XmlType(expected, text -> compiled.matcher(text.strip()).matches());
  }

  private static boolean areVersions(String text) {
    return text.isBlank() || Set.of("IFC2X3", "IFC4", "IFC4X3_ADD2").containsAll(Set.of(distinct(text)));
  }

  private static String[] distinct(String text) {
    return Arrays.stream(text.strip().split("\\s+")).distinct().toArray(String[]::new);
  }

  private static boolean isDate(String text) {
    try {
      return DatatypeFactory.newDefaultInstance().newXMLGregorianCalendar(text.strip()).getXMLSchemaType().equals(DatatypeConstants.DATE);
    } catch (IllegalArgumentException | IllegalStateException e) {
      return false;
    }
  }
}
