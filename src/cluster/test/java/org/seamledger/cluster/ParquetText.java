package org.seamledger.cluster;

import java.io.IOException;
import java.nio.file.Path;
import org.apache.parquet.conf.PlainParquetConfiguration;
import org.apache.parquet.example.data.Group;
import org.apache.parquet.hadoop.ParquetReader;
import org.apache.parquet.hadoop.api.ReadSupport;
import org.apache.parquet.hadoop.example.GroupReadSupport;
import org.apache.parquet.io.LocalInputFile;

/** Prints kinds and lengths of a table in Parquet. */
public final class ParquetText {

  private ParquetText() {
  }

  /** @param words the file */
  public static void main(String[] words) throws IOException {
    ParquetReader.Builder<Group> builder =
        new ParquetReader.Builder<>(new LocalInputFile(Path.of(words[0])), new PlainParquetConfiguration()) {
          @Override
          protected ReadSupport<Group> getReadSupport() {
            return new GroupReadSupport();
          }
        };
    try (ParquetReader<Group> reader = builder.build()) {
      for (Group row = reader.read(); row != null; row = reader.read()) {
        System.out.println(row.getString("kind", 0) + " " + row.getDouble("lengthM", 0));
      }
    }
  }
}
