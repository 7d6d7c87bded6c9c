package gapwise.server.testing.filled;

/** Screening under way: words and reasons of a team, papers decided, papers two differ about. */
final class FilledScreening {
  private static final int READ = 12;
  private static final String PAPER = "name=\"paper\" value=\"(ref-[0-9a-f]{16})\"";

  private FilledScreening() {}

  static void into(Filling filling, String longName) throws Exception {
    filling.post(
        "/screening/protocol",
        "who",
        "AB",
        "question",
        "What joins a gap of the tibia, transport or a membrane?",
        "reasons",
        "Not after an injury\nNo bone of the leg\nFewer than five patients",
        "for",
        "splint*\ntransport\nmembrane",
        "against",
        "sailors\ntumour*");
    for (int paper = 0; paper < READ; paper++) {
      choose(filling, "AB", "title", paper % 4 == 0 ? "exclude" : "keep");
      choose(filling, "CD", "title", paper % 3 == 0 ? "exclude" : "keep");
    }
    choose(filling, longName, "title", "unsure");
    choose(filling, "AB", "full-text", "exclude Not after an injury");
    choose(filling, "CD", "full-text", "exclude No bone of the leg");
    choose(filling, "AB", "full-text", "keep");
    choose(filling, "CD", "full-text", "keep");
    filling.shows("screening: under way", "/screening");
    filling.shows("screening: a paper by its title", "/screening/read?who=EF&stage=title");
    filling.shows("screening: a paper in full", "/screening/read?who=AB&stage=full-text");
    filling.shows("screening: two differ by title", "/screening/apart?stage=title");
    filling.shows("screening: two differ in full", "/screening/apart?stage=full-text");
  }

  private static void choose(Filling filling, String who, String stage, String choice)
      throws Exception {
    String next = "/screening/read?who=" + who.replace(" ", "%20") + "&stage=" + stage;
    String paper = filling.found(PAPER, next);
    filling.post("/screening/read", "who", who, "stage", stage, "paper", paper, "choose", choice);
  }
}
