package org.seamledger.export.section;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.Constructor;
import java.lang.reflect.Method;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Records as bytes and back, component by component in their order, by the types that these are declared with: records, enums, texts,
 * numbers, flags, bytes, lists, options, and facts by their names. Doubles are exact. The bytes don't say what they are: {@link #shape}
 * does, and who keeps bytes keeps it with them. Reading a small record takes less than a library that knows every form takes to begin.
 */
final class RecordCodec {

  private static final Map<Class<?>, RecordCodec> KNOWN = new LinkedHashMap<>();

  private final Constructor<?> maker;
  private final List<Method> accessors = new ArrayList<>();
  private final List<Type> types = new ArrayList<>();

  private RecordCodec(Class<?> type) throws ReflectiveOperationException {
    for (RecordComponent c : type.getRecordComponents()) {
      c.getAccessor().setAccessible(true);
      accessors.add(c.getAccessor());
      types.add(c.getGenericType());
    }
    maker = type.getDeclaredConstructor(Arrays.stream(type.getRecordComponents()).map(RecordComponent::getType).toArray(Class<?>[]::new));
    maker.setAccessible(true);
  }

  private static RecordCodec of(Class<?> type) throws IOException {
    synchronized (KNOWN) {
      RecordCodec known = KNOWN.get(type);
      if (known == null) {
        try {
          known = new RecordCodec(type);
        } catch (ReflectiveOperationException e) {
          throw new IOException(type.getName(), e);
        }
        KNOWN.put(type, known);
      }
      return known;
    }
  }

  static byte[] write(Record value) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      write(value.getClass(), value, new DataOutputStream(bytes));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  /** @throws IOException where the bytes aren't such a record */
  static <T extends Record> T read(Class<T> type, byte[] bytes) throws IOException {
    return type.cast(read(type, new DataInputStream(new ByteArrayInputStream(bytes))));
  }

  /** All that the bytes of some records depend on: names and types of their components, and of those of all records in them. */
  static String shape(List<Class<?>> records) {
    Map<Class<?>, String> shapes = new LinkedHashMap<>();
    records.forEach(r -> describe(r, shapes));
    return String.join("\n", shapes.values());
  }

  private static void describe(Type type, Map<Class<?>, String> shapes) {
    if (type instanceof ParameterizedType generic) {
      Arrays.stream(generic.getActualTypeArguments()).forEach(t -> describe(t, shapes));
    } else if (type instanceof Class<?> raw && !shapes.containsKey(raw) && (raw.isEnum() || raw.isRecord())) {
      shapes.put(raw, raw.getName() + (raw.isEnum() ? Arrays.toString(raw.getEnumConstants()) : ""));
      if (raw.isRecord()) {
        for (RecordComponent c : raw.getRecordComponents()) {
          shapes.merge(raw, c.getGenericType().getTypeName() + " " + c.getName(), (a, b) -> a + ", " + b);
          describe(c.getGenericType(), shapes);
        }
      }
    }
  }

  private static void write(Type type, Object value, DataOutputStream out) throws IOException {
    if (value instanceof Record) {
      of(value.getClass()).components(value, out);
    } else if (value instanceof Double d) {
      out.writeDouble(d);
    } else if (value instanceof String s) {
      bytes(s.getBytes(StandardCharsets.UTF_8), out);
    } else if (value instanceof Integer i) {
      out.writeInt(i);
    } else if (value instanceof Boolean b) {
      out.writeBoolean(b);
    } else if (value instanceof Enum<?> e) {
      out.writeByte(e.ordinal());
    } else if (value instanceof byte[] b) {
      bytes(b, out);
    } else if (value instanceof BigInteger n) {
      bytes(n.toByteArray(), out);
    } else if (value instanceof List<?> list) {
      out.writeInt(list.size());
      for (Object each : list) {
        write(argument(type), each, out);
      }
    } else if (value instanceof Map<?, ?> facts) {
      facts((Map<?, ?>) facts, out);
    } else {
      option(type, value, out);
    }
  }

  private void components(Object value, DataOutputStream out) throws IOException {
    for (int i = 0; i < types.size(); i++) {
      try {
        write(types.get(i), accessors.get(i).invoke(value), out);
      } catch (ReflectiveOperationException e) {
        throw new IOException(accessors.get(i).toString(), e);
      }
    }
  }

  private static void bytes(byte[] bytes, DataOutputStream out) throws IOException {
    out.writeInt(bytes.length);
    out.write(bytes);
  }

  /** Values of four types, each with the letter of its own. */
  private static void facts(Map<?, ?> facts, DataOutputStream out) throws IOException {
    out.writeInt(facts.size());
    for (Map.Entry<?, ?> fact : facts.entrySet()) {
      write(String.class, fact.getKey(), out);
      out.writeByte(fact.getValue().getClass().getSimpleName().charAt(0));
      write(fact.getValue().getClass(), fact.getValue(), out);
    }
  }

  private static void option(Type type, Object value, DataOutputStream out) throws IOException {
    Optional<?> option = value instanceof OptionalDouble d ? d.isPresent() ? Optional.of(d.getAsDouble()) : Optional.empty()
        : (Optional<?>) value;
    out.writeBoolean(option.isPresent());
    if (option.isPresent()) {
      write(type instanceof ParameterizedType ? argument(type) : double.class, option.get(), out);
    }
  }

  private static Type argument(Type type) {
    return ((ParameterizedType) type).getActualTypeArguments()[0];
  }

  private static Object read(Type type, DataInputStream in) throws IOException {
    Type raw = type instanceof ParameterizedType generic ? generic.getRawType() : type;
    if (raw == double.class || raw == Double.class) {
      return in.readDouble();
    } else if (raw == String.class) {
      return new String(bytes(in), StandardCharsets.UTF_8);
    } else if (raw == int.class || raw == Integer.class) {
      return in.readInt();
    } else if (raw == boolean.class || raw == Boolean.class) {
      return in.readBoolean();
    } else if (raw == byte[].class) {
      return bytes(in);
    } else if (raw == BigInteger.class) {
      return new BigInteger(bytes(in));
    } else if (raw == List.class) {
      return list(argument(type), in);
    } else if (raw == Map.class) {
      return facts(in);
    } else if (raw == Optional.class) {
      return in.readBoolean() ? Optional.of(read(argument(type), in)) : Optional.empty();
    } else if (raw == OptionalDouble.class) {
      return in.readBoolean() ? OptionalDouble.of(in.readDouble()) : OptionalDouble.empty();
    }
    Class<?> known = (Class<?>) raw;
    return known.isEnum() ? known.getEnumConstants()[in.readByte()] : of(known).made(in);
  }

  private Object made(DataInputStream in) throws IOException {
    Object[] values = new Object[types.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = read(types.get(i), in);
    }
    try {
      return maker.newInstance(values);
    } catch (ReflectiveOperationException e) {
      throw new IOException(maker.toString(), e);
    }
  }

  private static byte[] bytes(DataInputStream in) throws IOException {
    return in.readNBytes(in.readInt());
  }

  private static List<Object> list(Type of, DataInputStream in) throws IOException {
    List<Object> list = new ArrayList<>();
    for (int left = in.readInt(); left > 0; left--) {
      list.add(read(of, in));
    }
    return list;
  }

  private static Map<String, Object> facts(DataInputStream in) throws IOException {
    Map<String, Object> facts = new LinkedHashMap<>();
    for (int left = in.readInt(); left > 0; left--) {
      String name = (String) read(String.class, in);
      facts.put(name, switch (in.readByte()) {
        case 'D' -> in.readDouble();
        case 'I' -> in.readInt();
        case 'B' -> in.readBoolean();
        default -> read(String.class, in);
      });
    }
    return facts;
  }
}
