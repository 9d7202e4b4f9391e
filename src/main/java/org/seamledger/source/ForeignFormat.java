package org.seamledger.source;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * What a file is that is no IFC model, by its first bytes, and what to export in its place. The bytes are those of the formats' own
 * specifications: PDF ISO 32000-1 section 7.5.2, PNG (W3C) section 5.2, JPEG ITU-T T.81 annex B, GIF89a, TIFF 6.0, compound files [MS-CFB]
 * section 2.2, glTF 2.0 section 4.4, 7z, RAR 5.0 and XZ by their format notes; drawings begin with AC and the number of their release.
 */
enum ForeignFormat {

  PDF("a PDF document", Advice.MODEL, "%PDF-"),
  PNG("a picture (PNG)", Advice.MODEL, "\u0089PNG\r\n"),
  JPEG("a picture (JPEG)", Advice.MODEL, "\u00FF\u00D8\u00FF"),
  GIF("a picture (GIF)", Advice.MODEL, "GIF8"),
  TIFF("a picture (TIFF)", Advice.MODEL, "II*\0", "MM\0*"),
  WEBP("a picture (WebP)", Advice.MODEL, Pattern.compile("RIFF....WEBP.*", Pattern.DOTALL)),
  COMPOUND("a compound binary file, as CAD and office programs keep their own documents in", Advice.PROGRAM,
      "\u00D0\u00CF\u0011\u00E0\u00A1\u00B1\u001A\u00E1"),
  DWG("a CAD drawing (DWG)", Advice.PROGRAM, Pattern.compile("AC10[0-9]{2}.*", Pattern.DOTALL)),
  DXF("a CAD drawing (DXF)", Advice.PROGRAM, Pattern.compile("\\s*0\\s*[\\r\\n]+\\s*SECTION\\s.*", Pattern.DOTALL)),
  GLB("a scene of triangles (binary glTF)", Advice.TRIANGLES, "glTF"),
  GLTF("a scene of triangles (glTF)", Advice.TRIANGLES,
      Pattern.compile("\\s*\\{.*\"(asset|meshes|buffers|accessors)\"\\s*:.*", Pattern.DOTALL)),
  PLY("a mesh of triangles (PLY)", Advice.TRIANGLES, "ply\n", "ply\r\n"),
  STL("a mesh of triangles (STL)", Advice.TRIANGLES, Pattern.compile("solid [^\\r\\n]*[\\r\\n]+\\s*facet .*", Pattern.DOTALL)),
  OBJ("a mesh of triangles (OBJ)", Advice.TRIANGLES,
      Pattern.compile("(?:#[^\\r\\n]*+[\\r\\n]++|\\s++)*+(mtllib|o|g|v) .*", Pattern.DOTALL)),
  SEVEN_ZIP("an archive (7z)", Advice.ARCHIVE, "7z\u00BC\u00AF\u0027\u001C"),
  RAR("an archive (RAR)", Advice.ARCHIVE, "Rar!\u001A\u0007"),
  XZ("an archive (xz)", Advice.ARCHIVE, "\u00FD7zXZ\0"),
  BZIP2("an archive (bzip2)", Advice.ARCHIVE, "BZh"),
  ZSTD("an archive (Zstandard)", Advice.ARCHIVE, "(\u00B5/\u00FD"),
  SQLITE("an SQLite database", Advice.PROGRAM, "SQLite format 3\0"),
  HDF5("an HDF5 file", Advice.PROGRAM, "\u0089HDF\r\n"),
  HTML("a web page", "a download that answered with a page, such as one to log in; download the model itself",
      Pattern.compile("(?i)\\s*(<\\?xml[^>]*>\\s*)?(?:<!--.*?-->\\s*+)*+(<!doctype html|<html|<head|<body).*", Pattern.DOTALL)),
  IFC_XML("ifcXML", "export the model as STEP text (.ifc)",
      Pattern.compile("(?is)\\s*<.*(<(\\w+:)?(ifcxml|uos|iso_10303_28)\\b|buildingsmart-tech\\.org/ifc|ifcxml).*")),
  IDS("an IDS file", "it goes behind check --ids; a model is asked for here",
      Pattern.compile("(?s)\\s*<.*(<(\\w+:)?ids\\b|buildingsmart\\.org/IDS).*")),
  XML("XML", Advice.MODEL, Pattern.compile("\\s*(<\\?xml\\s|<!--|<[A-Za-z_][\\w:.-]*[\\s>/]).*", Pattern.DOTALL)),
  RESULT("a result of this program", "compare takes results; a model is asked for here",
      Pattern.compile("(?s)\\s*\\{\\s*\"contract\"\\s*:.*")),
  JSON("JSON", Advice.MODEL, Pattern.compile("\\s*[\\[{]\\s*[\\[{\"\\]}0-9].*", Pattern.DOTALL)),
  UTF_16("text in UTF-16", "save it as STEP text (.ifc) in ASCII or UTF-8, as the standard has it", "\u00FF\u00FE", "\u00FE\u00FF");

  /** What to do, where several formats ask for the same. */
  private static final class Advice {
    static final String MODEL = "export the building itself as IFC (.ifc)";
    static final String PROGRAM = "open it in the program that wrote it and export IFC (.ifc)";
    static final String TRIANGLES = "it knows no roofs, walls or openings; export IFC (.ifc) from the program that made the building";
    static final String ARCHIVE = "unpack it and name the .ifc file in it; gzip and zip are read as they are";
  }

  /** How many of the first bytes are looked at. */
  static final int LOOK = 4096;

  private final String words;
  private final String advice;
  private final String[] starts;
  private final Optional<Pattern> pattern;

  ForeignFormat(String words, String advice, String... starts) {
    this.words = words;
    this.advice = advice;
    this.starts = starts;
    this.pattern = Optional.empty();
  }

  ForeignFormat(String words, String advice, Pattern pattern) {
    this.words = words;
    this.advice = advice;
    this.starts = new String[0];
    this.pattern = Optional.of(pattern);
  }

  /** What begins so, if it is one of these; never for STEP text. */
  static Optional<ForeignFormat> of(byte[] first) {
    String bytes = new String(first, StandardCharsets.ISO_8859_1);
    if (bytes.stripLeading().toUpperCase(Locale.ROOT).replaceFirst("^\u00EF\u00BB\u00BF", "").startsWith("ISO-10303-21")) {
      return Optional.empty();
    }
    String text = bytes.startsWith("\u00EF\u00BB\u00BF") ? bytes.substring(3) : bytes;
    for (ForeignFormat f : values()) {
      for (String start : f.starts) {
        if (bytes.startsWith(start)) {
          return Optional.of(f);
        }
      }
      if (f.pattern.isPresent() && f.pattern.get().matcher(text).matches()) {
        return Optional.of(f);
      }
    }
    return Optional.empty();
  }

  /** For a message: what was found, and what to do. */
  String found() {
    return words + " (" + advice + ")";
  }
}
