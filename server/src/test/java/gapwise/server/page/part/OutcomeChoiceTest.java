package gapwise.server.page.part;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import gapwise.server.testing.SharedServer;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** A family of outcomes that words ask for becomes a choice of one. */
class OutcomeChoiceTest {
  private static final Pattern OPTION =
      Pattern.compile(
          "<a href=\"([^\"]*)\"( aria-current=\"true\")?>([^<]*) \\((\\d+) groups?, (\\d+)"
              + " stud(?:y|ies)\\)</a>");
  private static final String WEIGHT_BEARING =
      "outcome=full-weight-bearing-reached&outcome=no-weight-bearing-time"
          + "&outcome=time-to-partial-weight-bearing"
          + "&outcome=time-to-full-weight-bearing-in-support"
          + "&outcome=time-to-full-weight-bearing&outcome=time-to-unsupported-weight-bearing";

  @RegisterExtension static final SharedServer running = SharedServer.withDemonstration();

  private static String page(String path) throws Exception {
    return running.get(path).body().replace("&amp;", "&");
  }

  private static List<MatchResult> options(String page) {
    return OPTION.matcher(page).results().toList();
  }

  private static void assertCounts(MatchResult option, String filters) throws Exception {
    String outcome = option.group(1).replaceAll(".*[?&]outcome=([a-z-]+).*", "$1");
    Set<String> studies = new HashSet<>();
    int groups = 0;
    int all = Integer.MAX_VALUE;
    for (int page = 1; groups < all; page++) {
      JsonNode found =
          new ObjectMapper()
              .readTree(page("/api/v1/studies?outcome=" + outcome + filters + "&page=" + page));
      all = found.path("groups").asInt();
      for (JsonNode group : found.path("found")) {
        groups++;
        studies.add(group.path("study").asText());
      }
    }
    assertEquals(option.group(4), Integer.toString(groups), outcome);
    assertEquals(option.group(5), Integer.toString(studies.size()), outcome);
  }

  @Test
  void thePooledPageOffersEachOutcomeWithItsGroupsAndStudies() throws Exception {
    String page = page("/pooled?" + WEIGHT_BEARING + "&from=5&to=8");
    assertTrue(page.contains("Of weight bearing, papers report 5 outcomes here;"), page);
    List<MatchResult> options = options(page);
    assertEquals(5, options.size(), page);
    for (MatchResult option : options) {
      assertCounts(option, "&from=5&to=8");
      assertTrue(option.group(1).matches("/pooled\\?outcome=[a-z-]+&from=5&to=8"), option.group(1));
      assertTrue(page(option.group(1)).contains("id=\"result\""));
    }
  }

  @Test
  void theFamilyIsOneThingToTakeOff() throws Exception {
    String page = page("/pooled?" + WEIGHT_BEARING + "&from=5&to=8");
    assertTrue(
        page.contains("<a href=\"/pooled?from=5&to=8\">Weight bearing, any of its outcomes<"),
        page);
  }

  @Test
  void anOutcomeThatIsShownIsMarkedAndAnotherIsOneClickAway() throws Exception {
    String page = page("/pooled?outcome=union&method=bone-transport");
    List<MatchResult> options = options(page);
    assertTrue(options.size() > 1, page);
    assertEquals(
        List.of("Union, as the paper counts it"),
        options.stream().filter(one -> one.group(2) != null).map(one -> one.group(3)).toList());
    for (MatchResult option : options) {
      assertTrue(
          option.group(1).matches("/pooled\\?outcome=[a-z-]+&method=bone-transport"),
          option.group(1));
      assertCounts(option, "&method=bone-transport");
    }
  }

  @Test
  void theListOffersTheSameAndKeepsTheFamilyWhenAFilterChanges() throws Exception {
    String page = page("/studies?" + WEIGHT_BEARING + "&from=5&to=8");
    assertEquals(5, options(page).size(), page);
    assertEquals(
        6,
        Pattern.compile("type=\"checkbox\" name=\"outcome\" value=\"[a-z-]+\" checked")
            .matcher(page)
            .results()
            .count(),
        page);
    assertFalse(page.contains("<select id=\"outcome\""), page);
    assertTrue(page("/by-size?" + WEIGHT_BEARING).contains("Of weight bearing, papers report"));
  }
}
