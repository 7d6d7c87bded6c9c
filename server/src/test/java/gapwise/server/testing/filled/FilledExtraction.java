package gapwise.server.testing.filled;

import gapwise.server.page.desk.InventedPaper;
import gapwise.server.page.extraction.TwoReaders;
import gapwise.server.testing.RunningServer;
import java.nio.file.Files;
import java.util.Map;

/** Papers that two people extract apart, each at another step. */
final class FilledExtraction {
  private FilledExtraction() {}

  static void into(Filling filling, String longName) throws Exception {
    RunningServer running = filling.running();
    TwoReaders.open(running);
    String form = TwoReaders.form(running, "AB");
    byte[] paper = Files.readAllBytes(InventedPaper.write(filling.folder().resolve("apart.pdf")));
    filling.upload(form + "/paper", "paper", "invented.pdf", paper);
    TwoReaders.extract(running, "AB", Map.of());
    filling.asked(
        form + "/read",
        "cell",
        "c.3.events",
        "words",
        "10/12",
        "as",
        "9",
        "page",
        "1",
        "box",
        "216,141,248,155");
    TwoReaders.handIn(running, form, "AB");
    TwoReaders.extract(
        running,
        "CD",
        Map.of(
            "c.3.events", "8",
            "c.1.union_definition", "bridging of three of four cortices on two radiographs"));
    TwoReaders.begin(running, "EF");
    open(filling, "quell-2030", "Grafts over an invented membrane", "AB", "CD");
    open(filling, "waiting-2029", "Nails for the patient", longName, "GH");
    String own = filling.post("/extraction/quell-2030/draft", "who", "AB");
    filling.shows("extraction: the worklist", "/extraction");
    filling.shows("extraction: a paper of two readings", TwoReaders.PAPER);
    filling.shows("extraction: the form of one", own.replaceFirst("#.*", ""));
    String settle = TwoReaders.PAPER + "/settle?who=EF";
    filling.shows("extraction: settling", settle);
    filling.shows(
        "extraction: settling, with the paper",
        filling.found("href=\"([^\"]*settle[^\"]*outcomes[^\"]*)\"", settle));
  }

  private static void open(Filling filling, String study, String title, String first, String second)
      throws Exception {
    filling.post(
        "/extraction",
        "study",
        study,
        "title",
        title,
        "first",
        first,
        "second",
        second,
        "settler",
        "",
        "who",
        "EF");
  }
}
