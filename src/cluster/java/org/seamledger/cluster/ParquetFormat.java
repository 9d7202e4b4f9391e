package org.seamledger.cluster;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.parquet.conf.PlainParquetConfiguration;
import org.apache.parquet.example.data.Group;
import org.apache.parquet.example.data.simple.SimpleGroup;
import org.apache.parquet.hadoop.ParquetWriter;
import org.apache.parquet.hadoop.example.ExampleParquetWriter;
import org.apache.parquet.hadoop.metadata.CompressionCodecName;
import org.apache.parquet.io.LocalOutputFile;
import org.apache.parquet.schema.LogicalTypeAnnotation;
import org.apache.parquet.schema.MessageType;
import org.apache.parquet.schema.PrimitiveType.PrimitiveTypeName;
import org.apache.parquet.schema.Types;
import org.seamledger.portfolio.TableFormat;

/** Apache Parquet: one file a table, columns of numbers as {@code double}, all others as text; an empty cell is null. */
final class ParquetFormat implements TableFormat {

  /** Columns of every table in which a number or nothing stands. */
  private static final Set<String> NUMBERS = Set.of("lengthM", "areaM2", "planAreaM2", "junctionsM", "massKg", "net", "wastePercent",
      "withWaste", "pack", "order", "price", "cost", "labourHours", "inclinationDegrees", "foldDegrees", "slopeDegrees",
      "otherSlopeDegrees", "obliquityDegrees", "upstandM", "widthAcrossFallM", "depthAlongFallM", "diameterM", "tapeM", "beadM", "beadMl",
      "inSeamM", "startX", "startY", "startZ", "endX", "endY", "endZ", "modelledM", "gutterM", "x", "y", "z", "risk", "pieces", "closures",
      "fasteners");

  /** Columns of one table that hold counts, while those of that name elsewhere hold ids. */
  private static final Map<String, Set<String>> COUNTS = Map.of("models",
      Set.of("bytes", "faces", "junctions", "nodes", "violations", "warnings", "notes"), "kinds", Set.of("models", "lines"));

  @Override
  public String suffix() {
    return ONLY_ON_CLUSTERS;
  }

  @Override
  public TableFormat.Sheet begin(Path file, String table) {
    return new Sheet(file, table);
  }

  static boolean isNumber(String table, String column) {
    return NUMBERS.contains(column) || COUNTS.getOrDefault(table, Set.of()).contains(column);
  }

  private static MessageType schema(String table, List<String> columns) {
    Types.MessageTypeBuilder schema = Types.buildMessage();
    for (String column : columns) {
      if (isNumber(table, column)) {
        schema.optional(PrimitiveTypeName.DOUBLE).named(column);
      } else {
        schema.optional(PrimitiveTypeName.BINARY).as(LogicalTypeAnnotation.stringType()).named(column);
      }
    }
    return schema.named(table.replace('-', '_'));
  }

  private static final class Sheet implements TableFormat.Sheet {

    private final Path file;
    private final String table;
    private MessageType schema;
    private ParquetWriter<Group> writer;

    Sheet(Path file, String table) {
      this.file = file;
      this.table = table;
    }

    @Override
    public void row(List<String> cells) throws IOException {
      if (writer == null) {
        begin(cells);
      } else {
        write(cells);
      }
    }

    private void begin(List<String> columns) throws IOException {
      schema = schema(table, columns);
      writer = ExampleParquetWriter.builder(new LocalOutputFile(file)).withConf(new PlainParquetConfiguration()).withType(schema)
          .withCompressionCodec(CompressionCodecName.SNAPPY).withWriteMode(org.apache.parquet.hadoop.ParquetFileWriter.Mode.OVERWRITE)
          .build();
    }

    private void write(List<String> cells) throws IOException {
      Group row = new SimpleGroup(schema);
      for (int i = 0; i < schema.getFieldCount(); i++) {
        String cell = i < cells.size() ? cells.get(i) : "";
        if (!cell.isEmpty()) {
          add(row, i, cell);
        }
      }
      writer.write(row);
    }

    private void add(Group row, int column, String cell) {
      if (isNumber(table, schema.getFieldName(column))) {
        row.add(column, Double.parseDouble(cell));
      } else {
        row.add(column, cell);
      }
    }

    /** A table without any row has no columns to name. */
    @Override
    public void close() throws IOException {
      if (writer == null) {
        begin(List.of("path"));
      }
      writer.close();
    }
  }
}
