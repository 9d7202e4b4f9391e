package org.seamledger.export.submittal;

import java.util.List;
import java.util.stream.Collectors;
import org.seamledger.detail.Detail;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.MetalPart;
import org.seamledger.export.section.SectionSheet;
import org.seamledger.export.sheet.ServedPlaces;
import org.seamledger.export.wording.ElementNames;

/** A sheet for each detail in use: the section through its longest line, and the places that it serves. */
final class DetailPages implements SubmittalPages {

  private final SubmittalContent content;

  DetailPages(SubmittalContent content) {
    this.content = content;
  }

  @Override
  public OutlineEntry outline() {
    return new OutlineEntry(PageSet.DETAILS.title(), SubmittalContent.place(PageSet.DETAILS), content.details().values().stream()
        .map(served -> served.get(0).detail()).map(d -> new OutlineEntry(d.title(), SubmittalContent.detailPlace(d.id()))).toList());
  }

  @Override
  public void write(FoWriter fo) {
    content.frame().text(PageSet.DETAILS.title(), 1, () -> list(fo), fo);
    content.details().forEach((id, served) -> detail(served, fo));
  }

  private void list(FoWriter fo) {
    FoHeadings.title(fo, SubmittalContent.place(PageSet.DETAILS), "Details in use");
    if (content.details().isEmpty()) {
      FoHeadings.paragraph(fo, "No junction has a detail.");
      return;
    }
    FoTable table = FoTable.open(fo, FoTable.Column.words("Detail", 18), FoTable.Column.words("What it is", 40),
        FoTable.Column.number("Places", 7), FoTable.Column.number("Length", 17), FoTable.Column.words("Source", 25));
    content.details().forEach((id, served) -> {
      Detail detail = served.get(0).detail();
      table.row().cell(() -> content.link(PageSet.DETAILS, SubmittalContent.detailPlace(id), id, fo)).cell(detail.title())
          .cell(Integer.toString(served.size())).cell(content.units().length(lengthM(served))).cell(detail.source()).endRow();
    });
    table.close();
  }

  private static double lengthM(List<DetailedJunction> served) {
    return served.stream().mapToDouble(j -> j.junction().junction().lengthM()).sum();
  }

  private void detail(List<DetailedJunction> served, FoWriter fo) {
    Detail detail = served.get(0).detail();
    content.frame().drawing(SectionSheet.inSet(content.takeoff(), content.setup().sheets(), served), instead(served),
        SubmittalContent.detailPlace(detail.id()), fo);
    if (!ServedPlaces.fit(served.size(), content.setup().sheets())) {
      content.frame().text("Places of " + detail.id(), content.frame().columns(), () -> places(served, fo), fo);
    }
  }

  private String instead(List<DetailedJunction> served) {
    Detail detail = served.get(0).detail();
    return "Section to scale, square to the line of junction " + SubmittalContent.id(served.get(0)) + ": " + detail.title() + ". Metal: "
        + detail.metal().stream().map(MetalPart::part).collect(Collectors.joining(", ")) + ". Without any sealant: " + detail.waterPath()
        + " It serves " + served.size() + (served.size() == 1 ? " place." : " places.");
  }

  private void places(List<DetailedJunction> served, FoWriter fo) {
    Detail detail = served.get(0).detail();
    FoHeadings.title(fo, SubmittalContent.detailPlace(detail.id()) + "-places", "Places of " + detail.id());
    FoHeadings.paragraph(fo, detail.title() + ": " + served.size() + " places, " + content.units().length(lengthM(served)));
    FoTable table = FoTable.open(fo, FoTable.Column.words("Junction", 11), FoTable.Column.number("Length", 17),
        FoTable.Column.words("Faces, elements", 22));
    for (DetailedJunction j : served) {
      table.row().cell(() -> content.place(SubmittalContent.id(j), fo)).cell(content.units().length(j.junction().junction().lengthM()))
          .cell(String.join(" ", j.junction().junction().faces()) + " "
              + ElementNames.of(content.takeoff(), j.junction().junction().elements()))
          .endRow();
    }
    table.close();
  }
}
