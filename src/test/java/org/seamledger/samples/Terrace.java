package org.seamledger.samples;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** A terrace of gabled houses, no two beside each other of one height, as long as a test needs it: two roof slabs and two walls a house. */
public final class Terrace {

  private static final double WIDTH = 8;
  private static final double DEPTH = 10;
  private static final double RISE = 3;
  private static final double THICK = 0.2;
  private static final double STEP = 0.07;
  private static final String TRIANGLES =
      "((1,3,2),(1,4,3),(5,6,7),(5,7,8),(1,2,6),(1,6,5),(2,3,7),(2,7,6),(3,4,8),(3,8,7),(4,1,5),(4,5,8))";

  private final Writer out;
  private int next = 20;

  private Terrace(Writer out) {
    this.out = out;
  }

  /** Writes the model of a terrace. */
  public static Path write(Path file, int houses) {
    try (Writer out = Files.newBufferedWriter(file, StandardCharsets.US_ASCII)) {
      new Terrace(out).write(houses);
      return file;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void write(int houses) throws IOException {
    out.write("""
        ISO-10303-21;
        HEADER;
        FILE_DESCRIPTION((''),'2;1');
        FILE_NAME('terrace.ifc','2026-01-01T00:00:00',(''),(''),'','','');
        FILE_SCHEMA(('IFC4'));
        ENDSEC;
        DATA;
        #1=IFCCARTESIANPOINT((0.,0.,0.));
        #2=IFCAXIS2PLACEMENT3D(#1,$,$);
        #3=IFCGEOMETRICREPRESENTATIONCONTEXT($,'Model',3,1.E-5,#2,$);
        #4=IFCSIUNIT(*,.LENGTHUNIT.,$,.METRE.);
        #5=IFCUNITASSIGNMENT((#4));
        #6=IFCPROJECT('0000000000000000000001',$,'Terrace',$,$,$,$,(#3),#5);
        #7=IFCLOCALPLACEMENT($,#2);
        """);
    for (int i = 0; i < houses; i++) {
      house(i);
    }
    out.write("ENDSEC;\nEND-ISO-10303-21;\n");
  }

  private void house(int i) throws IOException {
    double x = i * WIDTH;
    double eave = 3 + i * 37 % 101 * STEP;
    double half = DEPTH / 2;
    slab(i, 'S', x, eave, 0, half);
    slab(i, 'N', x, eave, DEPTH, half);
    box(i, 'W', x, 0, x + WIDTH, 0.3, eave - 1);
    box(i, 'E', x, DEPTH - 0.3, x + WIDTH, DEPTH, eave - 1);
  }

  /** One side of a gable: from its eave to the ridge. */
  private void slab(int house, char side, double x, double eave, double y, double ridge) throws IOException {
    double z = eave + RISE;
    double[][] low = {{x, y, eave}, {x + WIDTH, y, eave}, {x + WIDTH, ridge, z}, {x, ridge, z}};
    double[][] all = new double[8][];
    for (int k = 0; k < 4; k++) {
      all[k] = new double[] {low[k][0], low[k][1], low[k][2] - THICK};
      all[k + 4] = low[k];
    }
    element("IFCSLAB", house, side, all, ",.ROOF.");
  }

  private void box(int house, char side, double x0, double y0, double x1, double y1, double top) throws IOException {
    double[][] all = {{x0, y0, 0}, {x1, y0, 0}, {x1, y1, 0}, {x0, y1, 0}, {x0, y0, top}, {x1, y0, top}, {x1, y1, top}, {x0, y1, top}};
    element("IFCWALL", house, side, all, ",$");
  }

  private void element(String keyword, int house, char side, double[][] points, String type) throws IOException {
    int id = next;
    next += 5;
    StringBuilder list = new StringBuilder();
    for (double[] p : points) {
      list.append(list.isEmpty() ? "" : ",").append(String.format(Locale.ROOT, "(%.6f,%.6f,%.6f)", p[0], p[1], p[2]));
    }
    out.write("#" + id + "=IFCCARTESIANPOINTLIST3D((" + list + "));\n");
    out.write("#" + (id + 1) + "=IFCTRIANGULATEDFACESET(#" + id + ",$,.T.," + TRIANGLES + ",$);\n");
    out.write("#" + (id + 2) + "=IFCSHAPEREPRESENTATION(#3,'Body','Tessellation',(#" + (id + 1) + "));\n");
    out.write("#" + (id + 3) + "=IFCPRODUCTDEFINITIONSHAPE($,$,(#" + (id + 2) + "));\n");
    out.write("#" + (id + 4) + "=" + keyword + "('" + side + String.format(Locale.ROOT, "%021d", house) + "',$,'" + side + house
        + "',$,$,#7,#" + (id + 3)
        + ",$" + type + ");\n");
  }
}
