package org.seamledger.quantity;

import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.seamledger.measure.Measure;
import org.seamledger.quantity.system.FieldName;

/** Records as the schema of a roof system's file: their components are its fields. */
final class SystemFields {

  private SystemFields() {
  }

  /** Every value as text with its unit, nested, under the names that results have. */
  static Map<String, Object> toMap(Record record) {
    Map<String, Object> map = new LinkedHashMap<>();
    for (RecordComponent component : record.getClass().getRecordComponents()) {
      Object value = get(component, record);
      map.put(names(component).get(0), value instanceof Measure measure ? measure.text()
          : value instanceof Record inner ? toMap(inner)
          : value instanceof Enum<?> constant ? word(constant)
          : value);
    }
    return map;
  }

  /** Names of a field, the one in results first; a file may use any. */
  static List<String> names(RecordComponent component) {
    FieldName other = component.getAnnotation(FieldName.class);
    return other == null ? List.of(component.getName()) : List.of(other.value(), component.getName());
  }

  /** A constant as it stands in files. */
  static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  static Object get(RecordComponent component, Record record) {
    try {
      return component.getAccessor().invoke(record);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(component + " can't be read", e);
    }
  }

  static Record construct(Class<? extends Record> type, RecordComponent[] components, Object[] values) {
    try {
      Class<?>[] types = Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
      return type.getDeclaredConstructor(types).newInstance(values);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(type + " can't be made", e);
    }
  }
}
