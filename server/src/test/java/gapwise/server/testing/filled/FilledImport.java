package gapwise.server.testing.filled;

import gapwise.server.testing.Forms;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Imports that would replace studies, that hold mistakes, and a colleague's own sheet. */
final class FilledImport {
  private static final String COLLEAGUES =
      String.join(
          "\r\n",
          "Invented papers for the talk,,,,",
          "Study,Method,Patients,Primary union (n/N),Gap (cm)",
          "Placeholder 2031,Bone transport,23,19/23 (83%),6.5",
          "Standin 2030,Induced membrane,17,15/17 (88%),over 4",
          "Makeweight 2029,the usual way,9,8/9,5-11",
          "Total,,49,42/49,",
          "");

  private FilledImport() {}

  static void into(Filling filling) throws Exception {
    filling.settled(hand(filling, rows("Quiet roads", "Old bridges", "retrospective-series")));
    String conflict =
        hand(
            filling,
            rows("Loud roads", "New bridges that cross a river of a long name", "randomised"));
    filling.settled(conflict);
    filling.shows("import: studies stand here with other content", conflict);
    String wrong =
        hand(
            filling,
            "study_id,title,year,design\r\nc,Lost roads,twenty,none of the list\r\nc,,2090,\r\n");
    filling.settled(wrong);
    filling.shows("import: with mistakes", wrong);
    filling.shows(
        "import: a colleague's sheet",
        filling.upload("/colleague-sheet", "sheet", "talk.csv", COLLEAGUES));
  }

  private static String rows(String first, String second, String design) {
    return "study_id,title,first_author,year,design,invented\r\nroads-2031,"
        + first
        + ",Quell,2031,"
        + design
        + ",yes\r\nbridges-2030,"
        + second
        + ",Marl,2030,"
        + design
        + ",yes\r\n";
  }

  /** Hands in a sheet of studies with the arms of two of them. */
  private static String hand(Filling filling, String studies) throws Exception {
    String arms =
        "study_id,arm_id,method,patients\r\nroads-2031,A,autograft,12\r\n"
            + "bridges-2030,A,bone-transport,20\r\n";
    HttpResponse<String> taken =
        new Forms(filling.running())
            .upload(
                "/import",
                List.of(
                    new Forms.Sent(
                        "files", "studies.csv", studies.getBytes(StandardCharsets.UTF_8)),
                    new Forms.Sent("files", "arms.csv", arms.getBytes(StandardCharsets.UTF_8))),
                "AB");
    return Filling.led(taken);
  }
}
