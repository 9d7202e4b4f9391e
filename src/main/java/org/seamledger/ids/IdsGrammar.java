package org.seamledger.ids;

/** The structure of an IDS 1.0 document: which elements and attributes stand where, how often, with which values. */
final class IdsGrammar {

  static final String IDS = "http://standards.buildingsmart.org/IDS";
  static final String XS = "http://www.w3.org/2001/XMLSchema";

  private static final XmlType CONDITIONAL = XmlType.oneOf("required", "prohibited", "optional");
  private static final XmlType SIMPLE = XmlType.oneOf("required", "prohibited");
  private static final XmlType RELATIONS = XmlType.oneOf("IFCRELAGGREGATES", "IFCRELASSIGNSTOGROUP", "IFCRELCONTAINEDINSPATIALSTRUCTURE",
      "IFCRELNESTS", "IFCRELVOIDSELEMENT IFCRELFILLSELEMENT");

  private static final int UNBOUNDED = XmlRule.UNBOUNDED;

  private IdsGrammar() {
  }

  /** Of the document's root, {@code ids}. */
  static XmlRule root() {
    XmlRule specifications = XmlRule.elements().then(IDS, "specification", specification(), 1, UNBOUNDED);
    return XmlRule.elements().then(IDS, "info", info(), 1, 1).then(IDS, "specifications", specifications, 1, 1);
  }

  private static XmlRule info() {
    XmlRule any = XmlRule.text(XmlType.ANY);
    return XmlRule.elements().then(IDS, "title", any, 1, 1).then(IDS, "copyright", any, 0, 1).then(IDS, "version", any, 0, 1)
        .then(IDS, "description", any, 0, 1).then(IDS, "author", XmlRule.text(XmlType.EMAIL), 0, 1)
        .then(IDS, "date", XmlRule.text(XmlType.DATE), 0, 1).then(IDS, "purpose", any, 0, 1).then(IDS, "milestone", any, 0, 1);
  }

  private static XmlRule specification() {
    return XmlRule.elements().then(IDS, "applicability", applicability(), 1, 1).then(IDS, "requirements", requirements(), 0, 1)
        .required("name", XmlType.ANY).required("ifcVersion", XmlType.VERSIONS).optional("identifier", XmlType.ANY)
        .optional("description", XmlType.ANY).optional("instructions", XmlType.ANY);
  }

  private static XmlRule applicability() {
    return XmlRule.elements().then(IDS, "entity", entity(), 0, 1).then(IDS, "partOf", partOf(), 0, UNBOUNDED)
        .then(IDS, "classification", classification(), 0, UNBOUNDED).then(IDS, "attribute", attribute(), 0, UNBOUNDED)
        .then(IDS, "property", property(), 0, UNBOUNDED).then(IDS, "material", material(), 0, UNBOUNDED)
        .optional("minOccurs", XmlType.WHOLE).optional("maxOccurs", XmlType.OCCURS);
  }

  /** The sequence of facets may be repeated, so they stand in any order. */
  private static XmlRule requirements() {
    return XmlRule.elements().optional("description", XmlType.ANY)
        .among(IDS, "entity", required(entity(), null), 0, UNBOUNDED)
        .among(IDS, "partOf", required(partOf(), SIMPLE), 0, UNBOUNDED)
        .among(IDS, "classification", required(classification(), CONDITIONAL).optional("uri", XmlType.ANY), 0, UNBOUNDED)
        .among(IDS, "attribute", required(attribute(), CONDITIONAL), 0, UNBOUNDED)
        .among(IDS, "property", required(property(), CONDITIONAL).optional("uri", XmlType.ANY), 0, UNBOUNDED)
        .among(IDS, "material", required(material(), CONDITIONAL).optional("uri", XmlType.ANY), 0, UNBOUNDED);
  }

  private static XmlRule required(XmlRule facet, XmlType cardinality) {
    facet.optional("instructions", XmlType.ANY);
    return cardinality == null ? facet : facet.optional("cardinality", cardinality);
  }

  private static XmlRule entity() {
    return XmlRule.elements().then(IDS, "name", value(), 1, 1).then(IDS, "predefinedType", value(), 0, 1);
  }

  private static XmlRule partOf() {
    return XmlRule.elements().then(IDS, "entity", entity(), 1, 1).optional("relation", RELATIONS);
  }

  private static XmlRule classification() {
    return XmlRule.elements().then(IDS, "value", value(), 0, 1).then(IDS, "system", value(), 1, 1);
  }

  private static XmlRule attribute() {
    return XmlRule.elements().then(IDS, "name", value(), 1, 1).then(IDS, "value", value(), 0, 1);
  }

  private static XmlRule property() {
    return XmlRule.elements().then(IDS, "propertySet", value(), 1, 1).then(IDS, "baseName", value(), 1, 1)
        .then(IDS, "value", value(), 0, 1).optional("dataType", XmlType.UPPER_CASE);
  }

  private static XmlRule material() {
    return XmlRule.elements().then(IDS, "value", value(), 0, 1);
  }

  private static XmlRule value() {
    return XmlRule.choice().then(IDS, "simpleValue", XmlRule.text(XmlType.ANY), 0, 1).then(XS, "restriction", restriction(), 0, 1);
  }

  /** XML Schema Part 2, the element restriction; a type that stands inside it has no meaning in IDS and is told off later. */
  private static XmlRule restriction() {
    XmlRule rule = XmlRule.elements().then(XS, "annotation", annotation(), 0, 1).then(XS, "simpleType", XmlRule.open(), 0, 1)
        .optional("base", XmlType.NAME).optional("id", XmlType.NC_NAME).withForeignAttributes();
    rule.then(XS, "enumeration", restricting(XmlType.ANY, false), 0, UNBOUNDED).among(XS, "pattern", restricting(XmlType.ANY, false), 0,
        UNBOUNDED);
    for (String bound : new String[] {"minExclusive", "minInclusive", "maxExclusive", "maxInclusive"}) {
      rule.among(XS, bound, restricting(XmlType.ANY, true), 0, UNBOUNDED);
    }
    for (String length : new String[] {"length", "minLength", "maxLength", "fractionDigits"}) {
      rule.among(XS, length, restricting(XmlType.WHOLE, true), 0, UNBOUNDED);
    }
    return rule.among(XS, "totalDigits", restricting(XmlType.POSITIVE, true), 0, UNBOUNDED)
        .among(XS, "whiteSpace", restricting(XmlType.oneOf("preserve", "replace", "collapse"), true), 0, UNBOUNDED);
  }

  private static XmlRule annotation() {
    XmlRule words = XmlRule.open().optional("source", XmlType.ANY).withForeignAttributes();
    return XmlRule.elements().then(XS, "documentation", words, 0, UNBOUNDED).among(XS, "appinfo", words, 0, UNBOUNDED)
        .optional("id", XmlType.NC_NAME).withForeignAttributes();
  }

  private static XmlRule restricting(XmlType value, boolean canBeFixed) {
    XmlRule rule = XmlRule.elements().then(XS, "annotation", annotation(), 0, 1).required("value", value)
        .optional("id", XmlType.NC_NAME).withForeignAttributes();
    return canBeFixed ? rule.optional("fixed", XmlType.BOOLEAN) : rule;
  }
}
