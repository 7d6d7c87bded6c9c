package gapwise.server.testing.filled;

import gapwise.server.page.desk.InventedPaper;
import gapwise.server.page.figure.FigureForms;
import java.nio.file.Files;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** A draft with its paper beside it: numbers read with their places, a table, a curve read off. */
final class FilledDesk {
  private FilledDesk() {}

  static void into(Filling filling) throws Exception {
    byte[] paper =
        Files.readAllBytes(InventedPaper.write(filling.folder().resolve("invented.pdf")));
    String draft = filling.post("/desk", "study", "transport-2031").replaceFirst("[?#].*", "");
    filling.upload(draft + "/paper", "paper", "invented.pdf", paper);
    filling.post(draft + "/outcome", "outcome", "primary-union");
    filling.post(
        draft,
        "c.1.title",
        "Transport of bone over invented gaps",
        "c.1.first_author",
        "Brisquell",
        "c.1.year",
        "2031",
        "c.1.invented",
        "yes",
        "c.2.method",
        "bone-transport",
        "c.2.patients",
        "12",
        "c.2.bones",
        "tibia",
        "c.3.events",
        "10",
        "c.3.total",
        "13");
    filling.asked(
        draft + "/read",
        "cell",
        "c.3.events",
        "words",
        "10/12",
        "as",
        "10",
        "page",
        "1",
        "box",
        "216,141,248,155");
    curve(filling, draft);
    filling.shows("desk: drafts", "/desk");
    filling.shows("desk: a draft with its paper", draft);
    filling.shows("desk: handing in with doubts", draft + "/hand-in");
    filling.shows("desk: a figure of the paper", draft + "/figure?page=3");
    String page = filling.running().get(draft).body();
    filling.shows(
        "desk: a page of the paper", Filling.foundIn("(/papers/[^\"/]+/pages/\\d+)", page));
    filling.shows(
        "desk: a curve read off", Filling.foundIn("href=\"([^\"]*figure\\?curve=\\d+)\"", page));
  }

  /** The curve of the paper, looked at and taken. */
  private static void curve(Filling filling, String draft) throws Exception {
    Map<String, String> typed = new TreeMap<>(FigureForms.ofTheInventedPaper());
    String looked = filling.asked(draft + "/figure", flat(typed));
    typed.put("looked", Filling.foundIn("name=\"looked\" value=\"([^\"]*)\"", looked));
    filling.post(draft + "/figure/take", flat(typed));
  }

  private static String[] flat(Map<String, String> fields) {
    return fields.entrySet().stream()
        .flatMap(one -> Stream.of(one.getKey(), one.getValue()))
        .toArray(String[]::new);
  }
}
