package gapwise.server.testing.filled;

import java.util.ArrayList;
import java.util.List;

/** A review written out in full, amended once after its work had begun. */
final class FilledReview {
  private FilledReview() {}

  /** Writes both versions; the second is an amendment where something was screened before. */
  static void into(Filling filling, String longName) throws Exception {
    filling.post("/review", fields(longName, "10", "planned", "0"));
    filling.post("/review", fields(longName, "5", "a smaller difference would change care", "1"));
    filling.shows("review: two versions", "/review");
    filling.shows("review: what waits for a person", "/review?who=AB");
    filling.shows("review: its form, filled", "/review/edit");
    filling.shows(
        "compare: with the differences of the review",
        "/compare?method=bone-transport&method=induced-membrane&aspect=union&whole=yes");
  }

  private static String[] fields(String longName, String matters, String why, String seen) {
    List<String> fields =
        new ArrayList<>(
            List.of(
                "title", "Transport or membrane for missing bone of the leg after an injury",
                "registration", "An invented register, number 2031-0042",
                "population", "Adults with 4 cm or more of missing tibia or femur after an injury.",
                "intervention", "bone-transport",
                "intervention", "internal-bone-transport",
                "comparator", "induced-membrane",
                "comparator", "vascularised-bone-flap",
                "include", "adults\nfive patients or more\nfollowed for a year on average",
                "exclude", "a tumour or a growing bone\nno patient with missing bone of the leg",
                "from", "4",
                "year-from", "1995",
                "languages", "English, German, French",
                "design", "randomised",
                "design", "retrospective-series",
                "who", "AB",
                "why", why,
                "seen", seen));
    List<String> outcomes =
        List.of("primary-union", "infection-recurrence", "time-to-union", "secondary-amputation");
    for (int at = 0; at < outcomes.size(); at++) {
      fields.addAll(List.of("outcome-" + (at + 1), outcomes.get(at)));
      fields.addAll(List.of("matters-" + (at + 1), at == 0 ? matters : "2"));
      fields.addAll(List.of("time-" + (at + 1), "at last follow-up, at least a year"));
    }
    List<String> people = List.of("AB", "CD", "EF", longName);
    List<String> duties = List.of("screens", "screens", "settles", "extracts");
    for (int at = 0; at < people.size(); at++) {
      fields.addAll(
          List.of("person-" + (at + 1), people.get(at), "duty-" + (at + 1), duties.get(at)));
    }
    return fields.toArray(String[]::new);
  }
}
