package gapwise.server.page.studies;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.SharedServer;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The groups of one study are read together: below each other in a list, side by side alone. */
class StudyGroupsTest {
  @RegisterExtension static final SharedServer running = SharedServer.withDemonstration();

  private static List<String> all(String pattern, String text) {
    return Pattern.compile(pattern)
        .matcher(text)
        .results()
        .map((MatchResult one) -> one.group(1))
        .toList();
  }

  /** Whatever the order, the first group of a paper leads the others. */
  @Test
  void theGroupsOfOneStudyStandTogether() throws Exception {
    List<String> studies =
        all(
            "<td class=\"what\"><a href=\"/studies/([^\"]+)\"",
            running.get("/studies?order=defect-descending").body());
    assertTrue(studies.size() > studies.stream().distinct().count(), studies.toString());
    String before = "";
    Set<String> seen = new HashSet<>();
    for (String study : studies) {
      assertTrue(study.equals(before) || seen.add(study), study + " stands apart in " + studies);
      before = study;
    }
  }

  /** The invented trial counts final union in both of its groups: 14 of 14 and 14 of 15. */
  @Test
  void anOutcomeOfTwoGroupsIsOneRow() throws Exception {
    String page = running.get("/studies/invented-55").body();
    assertEquals(
        List.of("A: Bone transport", "B: Induced membrane"),
        all("<th scope=\"col\"><svg(?s:.*?)</svg>\\s*([^<]*)</th>", page));
    String row = page.substring(page.indexOf(">Final union<"));
    assertEquals(
        List.of("14 of 14", "14 of 15"),
        all("<b>([^<]*)</b>", row.substring(0, row.indexOf("</tr>"))));
  }
}
