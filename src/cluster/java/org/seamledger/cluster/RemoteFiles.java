package org.seamledger.cluster;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.LocatedFileStatus;
import org.apache.hadoop.fs.Path;
import org.apache.hadoop.fs.RemoteIterator;
import org.apache.spark.SparkConf;
import org.apache.spark.deploy.SparkHadoopUtil;
import org.seamledger.portfolio.PortfolioModel;

/** Files of any file system that Spark knows, such as an object store, by their addresses. */
final class RemoteFiles {

  private RemoteFiles() {
  }

  private static FileSystem system(Path place) throws IOException {
    return place.getFileSystem(SparkHadoopUtil.get().newConfiguration(new SparkConf()));
  }

  /** Every file below a folder that isn't hidden, by its path from there. */
  static List<PortfolioModel> below(String folder) throws IOException {
    FileSystem system = system(new Path(folder));
    Path root = system.makeQualified(new Path(folder));
    String start = root.toString().endsWith("/") ? root.toString() : root + "/";
    List<PortfolioModel> models = new ArrayList<>();
    RemoteIterator<LocatedFileStatus> files = system.listFiles(root, true);
    while (files.hasNext()) {
      String address = files.next().getPath().toString();
      String name = address.substring(start.length());
      if (!("/" + name).contains("/.")) {
        models.add(new PortfolioModel(address, name));
      }
    }
    models.sort(Comparator.comparing(PortfolioModel::name));
    return models;
  }

  static void fetch(String address, java.nio.file.Path to) throws IOException {
    Path place = new Path(address);
    try (InputStream in = system(place).open(place)) {
      Files.copy(in, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }
}
