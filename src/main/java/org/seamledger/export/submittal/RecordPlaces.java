package org.seamledger.export.submittal;

import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.seamledger.journal.EventKind;
import org.seamledger.journal.ItemState;
import org.seamledger.journal.PlaceState;
import org.seamledger.journal.SiteEvent;
import org.seamledger.ledger.OwnersRecord;
import org.seamledger.photo.PhotoRefusedException;
import org.seamledger.photo.PhotoScaler;

/** A record's places, one after the other: what was looked at, by whom, everything that was said, and the photos. */
final class RecordPlaces {

  /** The longer edge of a picture on paper, pixels: 85 mm at some 200 dots an inch. */
  private static final int EDGE = 640;
  private static final String WIDTH = "85mm";

  private final OwnersRecord owners;
  private final Function<String, Optional<byte[]>> photos;
  private final FoWriter fo;

  RecordPlaces(OwnersRecord owners, Function<String, Optional<byte[]>> photos, FoWriter fo) {
    this.owners = owners;
    this.photos = photos;
    this.fo = fo;
  }

  static String words(PlaceState.Stage stage) {
    return switch (stage) {
      case OPEN -> "not begun";
      case BEGUN -> "begun";
      case FAILED -> "something is wrong";
      case CONFLICT -> "two people disagree";
      case CHECKED -> "looked at";
      case SIGNED -> "signed off";
      case RECHECK -> "changed since it was signed off";
    };
  }

  static String said(EventKind kind) {
    return switch (kind) {
      case TICK -> "ticked";
      case UNTICK -> "opened again";
      case FAILURE -> "not good";
      case LOT -> "sealant lot";
      case SIGN_OFF -> "signed off";
      case WITHDRAWAL -> "took the sign-off back";
      default -> kind.word();
    };
  }

  /** What was said of one place. */
  void write(PlaceState p) {
    FoHeadings.head(fo, "place-" + p.place().id(), p.place().id() + ", " + p.place().kind()
        + (p.place().isNode() ? "" : ", " + RecordPdf.metres(p.place().lengthM())) + ": " + words(p.stage()));
    p.items().forEach(this::item);
    events(p.events());
  }

  /** What was said of the whole roof, or of lines that this revision no longer has. */
  void rest() {
    List<SiteEvent> events = owners.record().elsewhere();
    if (!events.isEmpty()) {
      FoHeadings.head(fo, "elsewhere", "Of the whole roof, and of lines of earlier revisions");
      events(events);
    }
  }

  private void item(ItemState i) {
    String mark = i.isSettled() ? "☑ " : "☐ ";
    String who = i.answers().stream().map(e -> said(e.kind()) + " by " + owners.author(e) + ", " + RecordPdf.time(e.at()))
        .reduce((a, b) -> a + "; " + b).orElse("open");
    String what = i.item().isStep() ? "Done: " + i.item().label() : "Before " + i.item().label() + ": " + i.item().check();
    fo.open("block", "start-indent", "5mm", "text-indent", "-5mm", "space-after", "0.8mm").text(mark + what + ". ");
    fo.words("inline", who, "font-weight", "bold").close("block");
  }

  private void events(List<SiteEvent> events) {
    FoTable table = FoTable.open(fo, FoTable.Column.number("No.", 7), FoTable.Column.words("When", 16), FoTable.Column.words("Who", 20),
        FoTable.Column.words("What", 57));
    for (SiteEvent e : events) {
      String point = e.point().isEmpty() ? "" : ", " + e.point().substring(e.point().indexOf('/') + 1).replace('-', ' ');
      String place = e.text("place").isEmpty() ? "" : ", " + e.text("place");
      table.row().cell(Long.toString(e.seq())).cell(RecordPdf.time(e.at())).cell(owners.author(e))
          .cell(said(e.kind()) + (point.isEmpty() ? place : point) + (e.text("text").isEmpty() ? "" : ": " + e.text("text"))).endRow();
    }
    table.close();
    events.stream().filter(e -> e.kind() == EventKind.PHOTO).forEach(this::photo);
  }

  private void photo(SiteEvent e) {
    Optional<byte[]> small = photos.apply(e.text("photo")).flatMap(RecordPlaces::small);
    String words = "Photo by " + owners.author(e) + ", " + RecordPdf.time(e.at()) + ", SHA-256 " + e.text("photo");
    fo.open("block", "space-after", "2mm", "keep-together.within-column", "always");
    small.ifPresent(jpeg -> fo.open("block").empty("external-graphic", "src",
        "url('data:image/jpeg;base64," + Base64.getEncoder().encodeToString(jpeg) + "')", "content-width", "scale-down-to-fit", "width",
        WIDTH, "content-height", "scale-down-to-fit", "height", WIDTH, "fox:alt-text", words).close("block"));
    fo.block(small.isPresent() ? words : words + ": the picture is not there", "font-size", "0.8em").close("block");
  }

  private static Optional<byte[]> small(byte[] jpeg) {
    try {
      return Optional.of(PhotoScaler.scale(jpeg, EDGE).jpeg());
    } catch (PhotoRefusedException e) {
      return Optional.empty();
    }
  }
}
